import type { Campaign, CampaignInput, Lift, SectionWork } from '../campaign/index.js'
import { localTime } from '../clock/index.js'
import type { Limit } from '../limit/index.js'
import type { Instant } from '../quantity/index.js'
import { assert } from '../result/index.js'
import { inOrder, type SiteEvent } from './site-event.js'

/** A lift as it was really printed: section, date and the end of each layer, those not logged worked out. */
interface Grown {
  readonly work: SectionWork
  readonly date: string
  readonly firstLayer: number
  readonly ends: readonly Instant[]
}

/**
 * The lifts that stand, section by section. Layers of one section and one local date are one lift; the moments between
 * logged layers are spread by planned print time, those before the first logged layer counted back by it.
 */
export function builtLifts(
  input: CampaignInput,
  events: readonly SiteEvent[],
  told: Campaign | undefined,
): readonly Lift[] {
  return input.work
    .flatMap(work =>
      grownLifts(work, events, input.timeZone).map((one, i) => liftOf(input, one, i + 1, told)),
    )
    .sort((a, b) => a.start - b.start)
}

function grownLifts(work: SectionWork, events: readonly SiteEvent[], zone: string): readonly Grown[] {
  let lifts: Grown[] = []
  for (const event of inOrder(events)) {
    if ((event.kind !== 'layer' && event.kind !== 'taken-down') || event.section !== work.section) continue
    if (event.kind === 'taken-down') lifts = cutDown(lifts, event.layer)
    else lifts = grow(lifts, work, event.layer, event.at, localTime(event.at, zone).date)
  }
  return lifts
}

const topOf = (lifts: readonly Grown[]): number => {
  const last = lifts.at(-1)
  return last ? last.firstLayer + last.ends.length - 1 : 0
}

const cutDown = (lifts: readonly Grown[], layer: number): Grown[] =>
  lifts
    .map(lift => ({ ...lift, ends: lift.ends.slice(0, Math.max(0, layer - lift.firstLayer + 1)) }))
    .filter(lift => lift.ends.length > 0)

function grow(lifts: readonly Grown[], work: SectionWork, layer: number, at: Instant, date: string): Grown[] {
  const top = topOf(lifts)
  const last = lifts.at(-1)
  const times = work.printTimes.slice(top, layer)
  if (last?.date !== date)
    return [...lifts, { work, date, firstLayer: top + 1, ends: countedBack(times, at) }]
  const since = last.ends.at(-1)!
  return [...lifts.slice(0, -1), { ...last, ends: [...last.ends, ...spread(times, since, at)] }]
}

/** Ends of layers of these print times, the last of them at `end`. */
function countedBack(times: readonly number[], end: Instant): readonly Instant[] {
  const ends: Instant[] = []
  let at = end
  for (const time of [...times].reverse()) {
    ends.unshift(at)
    at -= time
  }
  return ends
}

/** Ends of layers between two moments, in the measure of their print times. */
function spread(times: readonly number[], from: Instant, to: Instant): readonly Instant[] {
  const total = times.reduce((sum, time) => sum + time, 0)
  let gone = 0
  return times.map(time => {
    gone += time
    return from + ((to - from) * gone) / total
  })
}

function liftOf(input: CampaignInput, grown: Grown, number: number, told: Campaign | undefined): Lift {
  const { work, firstLayer, ends, date } = grown
  const lastLayer = firstLayer + ends.length - 1
  const within = <T>(each: readonly T[]) => each.slice(firstLayer - 1, lastLayer)
  const sum = (each: readonly number[]) => within(each).reduce((total, one) => total + one, 0)
  const planned = told?.days
    .find(day => day.date === date)
    ?.lifts.find(lift => lift.section === work.section && lift.firstLayer === firstLayer)
  const start = ends[0]! - work.printTimes[firstLayer - 1]!
  const end = ends.at(-1)!
  return {
    id: `${work.section}${number}`,
    section: work.section,
    firstLayer,
    lastLayer,
    start,
    end,
    layerEnds: ends,
    holds: work.holds.filter(hold => hold.afterLayer >= firstLayer - 1 && hold.afterLayer < lastLayer),
    volume: sum(work.volumes),
    length: sum(work.lengths),
    wishedLayers: planned?.wishedLayers ?? ends.length,
    binding: planned?.lastLayer === lastLayer ? planned.binding : brokenOff(lastLayer, planned, end),
    runnersUp: [],
    safety: standingSafety(input, grown, start),
    pauseBudget: pauseLeft(input, start, ends),
  }
}

/** The log, not a limit of the plan, says how far it got. */
const brokenOff = (lastLayer: number, planned: Lift | undefined, at: Instant): Limit => ({
  kind: 'broken-off',
  demand: (planned?.lastLayer ?? lastLayer) + 1,
  capacity: lastLayer,
  unit: 'layer',
  source: 'the site log',
  at,
})

function standingSafety(input: CampaignInput, { work, firstLayer, ends }: Grown, start: Instant): number {
  const temperatures = ends.map(end => mixAt(input, end))
  const temperature = temperatures.reduce((total, one) => total + one, 0) / temperatures.length
  return input.physics.standing({ section: work.section, firstLayer, start, layerEnds: ends, temperature })
    .safety
}

function mixAt({ hours }: CampaignInput, at: Instant): number {
  const first = hours[0]
  assert(first, 'the plan has hours of weather')
  const index = Math.floor((at - first.start) / 3600)
  return hours[Math.min(hours.length - 1, Math.max(0, index))]!.mixTemperature
}

/** What was left of the longest rest at the worst layer; below zero there is a cold joint. */
function pauseLeft({ physics }: CampaignInput, start: Instant, ends: readonly Instant[]): number {
  const laid = [start, ...ends]
  const first = ends.length > 1 ? 1 : 0
  return Math.min(
    ...ends.slice(first).map((end, i) => {
      const since = laid[i + first]!
      return physics.longestRest(since).seconds - (end - since)
    }),
  )
}
