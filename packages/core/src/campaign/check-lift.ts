import type { Units } from '../limit/index.js'
import { formatQuantity } from '../quantity/index.js'
import type { Finding } from '../result/index.js'
import { hoursBetween, type PrintHour } from '../weather/index.js'
import type { Lift, PrintDay, SectionWork } from './campaign.js'
import type { CampaignInput } from './campaign-input.js'
import { holdTime } from './check-day.js'
import { isOpenThroughout } from './check-open.js'
import { fault } from './fault.js'

const SLACK = 5e-3

/** Whether one lift may be printed at its clock times: height, lift ends, pace, resting time, open hours, standing. */
export function checkLift(
  input: CampaignInput,
  day: PrintDay,
  lift: Lift,
  units: Units = 'metric',
): readonly Finding[] {
  const work = input.work.find(one => one.section === lift.section)
  if (!work) return []
  return [
    ...checkHeight(input, work, lift, units),
    ...checkPace(input, work, lift),
    ...checkRest(input, lift),
    ...checkHours(input, day, lift),
    ...checkStanding(input, lift),
  ]
}

function checkHeight(input: CampaignInput, work: SectionWork, lift: Lift, units: Units): readonly Finding[] {
  const layers = lift.lastLayer - lift.firstLayer + 1
  const height = layers * work.layerHeight
  const most = input.rules.liftHeight.value
  const findings: Finding[] = []
  if (height > most + 1e-6) {
    const say = `Lift ${lift.id} is ${formatQuantity(height, 'length', units)} tall; ${formatQuantity(most, 'length', units)} is allowed.`
    findings.push(fault('lift-height', lift.id, height, most, 'm', say))
  }
  for (const end of work.liftEnds) {
    if (lift.firstLayer <= end.afterLayer && lift.lastLayer > end.afterLayer) {
      const say = `Lift ${lift.id} runs past layer ${end.afterLayer}, where ${end.ref} has to end it.`
      findings.push(fault('lift-end', lift.id, lift.lastLayer, end.afterLayer, 'layer', say))
    }
  }
  return findings
}

function checkPace(input: CampaignInput, work: SectionWork, lift: Lift): readonly Finding[] {
  const findings: Finding[] = []
  if (lift.layerEnds.length !== lift.lastLayer - lift.firstLayer + 1 || lift.end !== lift.layerEnds.at(-1)) {
    findings.push(fault('clock', lift.id, 0, 0, 's', `Lift ${lift.id} does not tell the end of each layer.`))
  }
  let at = lift.start
  for (const [i, end] of lift.layerEnds.entries()) {
    const layer = lift.firstLayer + i
    const takes = work.printTimes[layer - 1]! + (i > 0 ? holdTime(input, lift, layer - 1) : 0)
    if (Math.abs(end - at - takes) > SLACK) {
      const say = `Layer ${layer} of ${lift.id} has ${end - at} s; printing and holds take ${takes} s.`
      findings.push(fault('pace', lift.id, end - at, takes, 's', say))
    }
    at = end
  }
  return findings
}

function checkRest(input: CampaignInput, lift: Lift): readonly Finding[] {
  return lift.layerEnds.slice(1).flatMap((end, i) => {
    const laid = lift.layerEnds[i]!
    const bare = end - laid
    const hour = hourAt(input, laid - SLACK)
    const most = input.physics.longestRest(hour?.start ?? laid).seconds
    if (bare <= most + SLACK) return []
    const say = `Layer ${lift.firstLayer + i} of ${lift.id} lies bare for ${bare} s; ${most} s is bond's limit.`
    return [fault('resting-time', lift.id, bare, most, 's', say)]
  })
}

function checkHours(input: CampaignInput, day: PrintDay, lift: Lift): readonly Finding[] {
  const findings: Finding[] = []
  for (const [i, end] of lift.layerEnds.entries()) {
    const layer = lift.firstLayer + i
    const work = input.work.find(one => one.section === lift.section)!
    const begin = end - work.printTimes[layer - 1]!
    if (isOpenThroughout(input.hours, begin + SLACK, end - SLACK, day.chilled)) continue
    const say = `Layer ${layer} of ${lift.id} is laid while a limit of the weather is passed, or nothing is known of it.`
    findings.push(fault('closed-hour', lift.id, begin, end, 's', say))
  }
  return findings
}

/** Tap water if that will do, else chilled as far as the limit asks and the chiller reaches. */
function mixAt(hour: PrintHour): number {
  const cold = hour.mixTemperatureChilled
  const warmest = hour.limits.find(limit => limit.kind === 'mix-hot')?.capacity
  if (cold === undefined || warmest === undefined || hour.mixTemperature <= warmest)
    return hour.mixTemperature
  return [cold, warmest].sort((a, b) => a - b)[1]!
}

/** The physics is asked again, for this lift and no taller one. */
function checkStanding(input: CampaignInput, lift: Lift): readonly Finding[] {
  const temperatures = lift.layerEnds.flatMap(end => {
    const hour = hourAt(input, end - SLACK)
    return hour ? [mixAt(hour)] : []
  })
  const temperature = temperatures.reduce((sum, one) => sum + one, 0) / temperatures.length
  const { section, firstLayer, start, layerEnds } = lift
  const stands = input.physics.standing({ section, firstLayer, start, layerEnds, temperature })
  if (stands.layers >= layerEnds.length) return []
  const say = `Lift ${lift.id} has ${layerEnds.length} layers; only ${stands.layers} stand.`
  return [fault('standing', lift.id, layerEnds.length, stands.layers, 'layers', say)]
}

/** The hour a moment lies in. */
const hourAt = ({ hours }: CampaignInput, at: number): PrintHour | undefined =>
  hoursBetween(hours, at, at + SLACK).find(hour => hour.start <= at)
