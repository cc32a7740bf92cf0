import type { Finding } from '../result/index.js'
import type { Campaign } from './campaign.js'
import type { CampaignInput } from './campaign-input.js'
import { fault } from './fault.js'

/** A lintel on two sections is set when both stand up to it: neither may go on above it on the day that happens, or before. */
export function checkSharedLintels(input: CampaignInput, campaign: Campaign): readonly Finding[] {
  const refs = new Set(input.work.flatMap(work => work.liftEnds.map(end => end.ref)))
  return [...refs].flatMap(ref => {
    const seats = input.work.flatMap(({ section, liftEnds }) =>
      liftEnds.filter(end => end.ref === ref).map(({ afterLayer }) => ({ section, afterLayer })),
    )
    if (new Set(seats.map(seat => seat.section)).size < 2) return []
    const reached = seats.map(seat => dayReached(input, campaign, seat.section, seat.afterLayer))
    const latest = [...reached].sort().at(-1)!
    return seats.flatMap(({ section, afterLayer }) => {
      const goesOn = dayReached(input, campaign, section, afterLayer + 1)
      // '' was there before the campaign: nothing of it can be moved.
      if (goesOn > latest || goesOn === '' || goesOn === NEVER_DATE) return []
      const say = `Section ${section} goes on above ${ref} on ${goesOn}; all that carry it stand up to it on ${latest === NEVER_DATE ? 'no day' : latest}.`
      return [fault('shared-lintel', section, 0, 1, 'day', say)]
    })
  })
}

/** Sorts after every date. */
const NEVER_DATE = '9999'

/** Local date on which a section first stands so many layers; '' when it did before the campaign. */
function dayReached(input: CampaignInput, campaign: Campaign, section: string, layer: number): string {
  const before = input.standing?.find(one => one.section === section)?.layers ?? 0
  if (before >= layer) return ''
  const day = campaign.days.find(({ lifts }) =>
    lifts.some(lift => lift.section === section && lift.lastLayer >= layer),
  )
  return day?.date ?? NEVER_DATE
}
