import { isDate } from '../clock/index.js'
import { sayQuantity, type Units } from '../limit/index.js'
import type { Problem } from '../result/index.js'
import type { SectionWork } from './campaign.js'
import type { CampaignInput } from './campaign-input.js'

/** Everything in an input that no plan can be made of, or that contradicts itself. All at once. */
export function checkCampaignInput(input: CampaignInput, units: Units = 'metric'): readonly Problem[] {
  return [
    ...checkCrew(input),
    ...checkDates(input),
    ...checkHours(input),
    ...input.work.flatMap((work, i) => checkWork(input, work, `work[${i}]`, units)),
    ...checkStanding(input),
  ]
}

const problem = (code: string, at: string, say: string): Problem => ({ code: `campaign/${code}`, at, say })

function checkCrew({ crew }: CampaignInput): readonly Problem[] {
  const problems: Problem[] = []
  const overhead = crew.setUp + crew.washOut
  if (overhead >= crew.longestShift) {
    const say = `Set-up and wash-out take ${overhead / 60} min of a shift of ${crew.longestShift / 60} min; nothing is left to print in. Lengthen the shift.`
    problems.push(problem('no-time', 'crew.longestShift', say))
  }
  if (crew.workDays.length === 0) {
    problems.push(problem('no-work-days', 'crew.workDays', 'No weekday is worked. Name at least one.'))
  }
  return problems
}

function checkDates({ calendar, due }: CampaignInput): readonly Problem[] {
  const problems: Problem[] = []
  if (!isDate(calendar.firstDay)) {
    const say = `The first day is ${calendar.firstDay}; a date like 2026-07-06 is needed.`
    problems.push(problem('date', 'calendar.firstDay', say))
  }
  if (due !== undefined && !isDate(due)) {
    problems.push(problem('date', 'due', `The due date is ${due}; a date like 2026-07-06 is needed.`))
  } else if (due !== undefined && due < calendar.firstDay) {
    const say = `The walls are wanted on ${due}, before the first day ${calendar.firstDay}. Move either.`
    problems.push(problem('due-in-the-past', 'due', say))
  }
  return problems
}

function checkHours({ hours }: CampaignInput): readonly Problem[] {
  if (hours.length === 0) {
    const say = 'No weather is known. Give hours, a forecast or climate normals from the first day on.'
    return [problem('no-weather', 'hours', say)]
  }
  const back = hours.findIndex((hour, i) => i > 0 && hour.start <= hours[i - 1]!.start)
  if (back < 0) return []
  return [problem('hours-order', `hours[${back}]`, `Hour ${back} does not come after hour ${back - 1}.`)]
}

function checkWork(input: CampaignInput, work: SectionWork, at: string, units: Units): readonly Problem[] {
  const problems: Problem[] = []
  const layers = work.printTimes.length
  const add = (code: string, say: string) => problems.push(problem(code, at, say))
  if (layers === 0) add('no-layers', `Section ${work.section} has no layers.`)
  if (work.lengths.length !== layers || work.volumes.length !== layers) {
    add(
      'layer-count',
      `Section ${work.section} has ${layers} print times, ${work.lengths.length} lengths and ${work.volumes.length} volumes; they must agree.`,
    )
  }
  if (!(work.layerHeight > 0))
    add(
      'layer-height',
      `Layers of section ${work.section} are ${sayQuantity(work.layerHeight, 'm', units)} high; they must be higher than nothing.`,
    )
  const bad = work.printTimes.findIndex(time => !(time > 0))
  if (bad >= 0)
    add(
      'print-time',
      `Layer ${bad + 1} of section ${work.section} takes ${work.printTimes[bad]} s; it must take longer than nothing.`,
    )
  if (input.work.filter(one => one.section === work.section).length > 1) {
    add('doubled-section', `More than one section is called ${work.section}.`)
  }
  return [...problems, ...checkHolds(input, work, at)]
}

/** Holds off the wall, longer than a shift, or lintels and pours where no lift ends. */
function checkHolds({ crew }: CampaignInput, work: SectionWork, at: string): readonly Problem[] {
  const layers = work.printTimes.length
  const ends = new Set([...work.liftEnds.map(end => end.afterLayer), layers, 0])
  const room = crew.longestShift - crew.setUp - crew.washOut
  return work.holds.flatMap((hold, i): readonly Problem[] => {
    const where = `${at}.holds[${i}]`
    if (hold.afterLayer < 0 || hold.afterLayer > layers) {
      const say = `The stop for ${hold.ref} is after layer ${hold.afterLayer}; section ${work.section} has ${layers}.`
      return [problem('hold-off-the-wall', where, say)]
    }
    if ((hold.reason === 'lintel' || hold.reason === 'pour') && !ends.has(hold.afterLayer)) {
      const say = `${hold.ref} is to be set after layer ${hold.afterLayer} of section ${work.section}, but no lift ends there. End one there or move it.`
      return [problem('hold-without-lift-end', where, say)]
    }
    if (hold.duration >= room) {
      const say = `The stop for ${hold.ref} takes ${hold.duration / 60} min; a shift has ${room / 60} min besides set-up and wash-out.`
      return [problem('hold-too-long', where, say)]
    }
    return []
  })
}

function checkStanding(input: CampaignInput): readonly Problem[] {
  return (input.standing ?? []).flatMap((one, i): readonly Problem[] => {
    const work = input.work.find(other => other.section === one.section)
    const at = `standing[${i}]`
    if (!work) {
      return [problem('unknown-section', at, `Section ${one.section} stands, but the job does not have it.`)]
    }
    const layers = work.printTimes.length
    if (!Number.isInteger(one.layers) || one.layers < 0 || one.layers > layers) {
      const say = `Section ${one.section} is said to stand ${one.layers} layers; 0 to ${layers} are possible.`
      return [problem('standing', at, say)]
    }
    return []
  })
}
