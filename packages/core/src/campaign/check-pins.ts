import type { LiftPin } from '../job/index.js'
import type { Finding } from '../result/index.js'
import type { Campaign, Lift } from './campaign.js'
import type { CampaignInput } from './campaign-input.js'
import { fault } from './fault.js'

interface DatedLift {
  readonly date: string
  readonly lift: Lift
}

/** Whether the campaign does what the lead has settled. */
export function checkPins(input: CampaignInput, campaign: Campaign): readonly Finding[] {
  const lifts = campaign.days.flatMap(({ date, lifts }) => lifts.map(lift => ({ date, lift })))
  return (input.pins ?? []).flatMap((pin): readonly Finding[] => {
    const own = lifts.filter(({ lift }) => lift.section === pin.section)
    if (pin.kind === 'lift') return checkLiftPin(input, pin, own)
    return own
      .filter(({ date }) => pin.dates.includes(date))
      .map(({ date, lift }) => {
        const say = `Lift ${lift.id} is planned on ${date}, on which section ${pin.section} is to rest.`
        return fault('pin', lift.id, 1, 0, 'lifts', say)
      })
  })
}

function checkLiftPin(input: CampaignInput, pin: LiftPin, own: readonly DatedLift[]): readonly Finding[] {
  const { section, date, layers } = pin
  const name = `${section}${pin.lift}`
  const standing = input.standing?.find(one => one.section === section)
  const isPast = standing?.lifts !== undefined && standing.lifts >= pin.lift
  const isKnown = input.work.some(work => work.section === section)
  if (isPast || !isKnown) return []
  const found = own.find(({ lift }) => lift.id === name)
  if (found?.date !== date) {
    const say = `Lift ${name} is pinned to ${date}, but is ${found ? `planned on ${found.date}` : 'not planned at all'}.`
    return [fault('pin', name, 1, 0, 'lifts', say)]
  }
  const { firstLayer, lastLayer } = found.lift
  if (!layers || (firstLayer === layers.first && lastLayer === layers.last)) return []
  const say = `Lift ${name} is pinned to layers ${layers.first} to ${layers.last}, but planned from ${firstLayer} to ${lastLayer}.`
  return [fault('pin', name, layers.last - layers.first + 1, lastLayer - firstLayer + 1, 'layers', say)]
}
