import type { Instant } from '../quantity/index.js'
import type { LiftScene } from './allowance.js'
import type { NextGain } from './campaign.js'
import type { CampaignInput } from './campaign-input.js'
import { type DayPlan, dayBegins, fillDay, liftVolume } from './day-plan.js'
import { type Ground, prepareGround } from './ground.js'
import type { KnownGains, LayerGain } from './known-gains.js'
import { type Lever, leverSettings, leversFor, leverUnits, pullLever } from './lever.js'
import { standingOf } from './lift-reach.js'
import { whyNoTaller } from './lift-report.js'
import { openBook } from './standing-book.js'
import { calendarDays } from './work-day.js'

/** A lever pulled: the ground it makes, and what the whole campaign gains by it [calendar days]. */
export interface PulledLever {
  readonly ground: Ground
  readonly days: () => number
}

/** Levers ready to be pulled, and all that a lift's gains rest on besides the lift and its sections. */
export interface LeverBench {
  readonly pull: (lever: Lever) => PulledLever | undefined
  readonly common: string
}

/** Days of weather kept beyond the finish: a lever that would finish later than that buys nothing. */
const BEYOND = 10 * 86400

/** So many levers of each lift are put to the physics and told. */
const TOLD = 3

/** Each lever is prepared once for all lifts. `finishOf` plans the campaign on a ground, as it is and as changed. */
export function leverBench(
  ground: Ground,
  finish: Instant,
  finishOf: (ground: Ground) => string | undefined,
): LeverBench {
  const { input, book } = ground
  const known = new Map<string, PulledLever | undefined>()
  const near = { ...input, hours: hoursUntil(input.hours, finish + BEYOND) }
  const common = commonText(input)
  /** By the plain rule, and the same for the days held and for those searched after. */
  const plain = (key: string, on: Ground) => {
    const make = () => finishOf(unasked(on))
    return (
      input.physics.known?.finish(
        input.hours,
        [common, sectionsText(input), near.hours.length, key].join('\n'),
        make,
      ) ?? make()
    )
  }
  let asIs: string | undefined
  const pull = (lever: Lever) => {
    const key = `${lever.kind} ${lever.setting}`
    if (known.has(key)) return known.get(key)
    const changed = pullLever(near, lever)
    const moved = changed && prepareGround(changed, book)
    let days: number | undefined
    const pulled = moved && {
      ground: moved,
      days: () => {
        asIs ??= plain('', ground) ?? ''
        days ??= daysSooner(asIs, plain(key, moved))
        return days
      },
    }
    known.set(key, pulled)
    return pulled
  }
  return { pull, common }
}

/** A book of its own, so that an answer does not depend on what was asked before it. */
const unasked = (ground: Ground): Ground => ({
  ...ground,
  book: openBook(ground.input.physics),
  standing: 'sampled',
})

const nearHours = new WeakMap<CampaignInput['hours'], Map<Instant, CampaignInput['hours']>>()

/** The same list for the same moment. */
function hoursUntil(hours: CampaignInput['hours'], until: Instant): CampaignInput['hours'] {
  const known = nearHours.get(hours) ?? new Map<Instant, CampaignInput['hours']>()
  nearHours.set(hours, known)
  const near = known.get(until) ?? hours.filter(hour => hour.start < until)
  known.set(until, near)
  return near
}

/** Every section, told from any other one. */
const sectionsText = ({ work, standing, physics: { known } }: CampaignInput): string =>
  JSON.stringify([work.map(({ section }) => known?.sectionNumber(section)), standing])

/** Lift ends of all sections count: neighbours wait for lintels they share. */
function commonText(input: CampaignInput): string {
  const { crew, rules, calendar, timeZone, speed, chilledWater, deliveries, shiftBegan, pins, work } = input
  const ends = work.map(({ section, liftEnds }) => [section, liftEnds])
  return JSON.stringify([
    crew,
    rules,
    calendar,
    timeZone,
    speed,
    chilledWater,
    deliveries,
    shiftBegan,
    pins,
    ends,
  ])
}

/** Calendar days; never counted against a lever, which nobody has to pull. */
const daysSooner = (asIs: string, changed: string | undefined): number =>
  asIs === '' || changed === undefined ? 0 : Math.max(0, calendarDays(changed, asIs))

/**
 * Levers that would buy layers of this lift, the most welcome first, each at its mildest setting that buys most. Those of
 * a lift that an earlier plan had just so are not looked for again; what they bring the campaign is.
 */
export function liftGains(scene: LiftScene, bench: LeverBench): readonly NextGain[] {
  const { hours, physics } = scene.ground.input
  const find = () => layerGains(scene, bench)
  const gains = physics.known?.gains(hours, gainsKey(scene, bench, physics.known), find) ?? find()
  return gains
    .map(gain => ({ ...gain, days: bench.pull({ kind: gain.lever, setting: gain.setting })?.days() ?? 0 }))
    .sort(
      (a, b) =>
        welcome({ kind: b.lever }, b.layers) - welcome({ kind: a.lever }, a.layers) || b.days - a.days,
    )
}

/** All that the gains of a lift rest on: its day up to it, and what stands that morning. */
function gainsKey(
  { ground, plan, lift, stand, printed }: LiftScene,
  bench: LeverBench,
  known: KnownGains,
): string {
  const upTo = plan.lifts.slice(0, plan.lifts.indexOf(lift) + 1)
  const lifts = upTo.map(({ s, below, layers, start, holdBefore }) => {
    const number = known.sectionNumber(ground.sections[s]!.work.section)
    return [s, number, below, layers, start, holdBefore, stand.ready[s]].join(' ')
  })
  const spent = ground.input.deliveries ? printed : 0
  return [bench.common, plan.day.date, stand.heights.join(), stand.lifts.join(), spent, ...lifts].join('\n')
}

/** Looked for on sampled standing; those told are asked of the physics. */
function layerGains(scene: LiftScene, { pull }: LeverBench): readonly LayerGain[] {
  const { binding, isChoice } = whyNoTaller(scene)
  if (isChoice) return []
  const book = openBook(scene.ground.input.physics)
  const groundOf = (ground: Ground | undefined) => ground && { ...ground, book, standing: 'sampled' as const }
  const promising = (leversFor[binding.kind] ?? []).flatMap(kind => {
    const tried = leverSettings(scene.ground.input, kind).map(lever => {
      const ground = groundOf(lever.kind === 'next-day' ? scene.ground : pull(lever)?.ground)
      const changed = ground && again(scene, lever, ground)
      return { lever, changed, layers: layersGained(scene, changed) }
    })
    const most = Math.max(...tried.map(one => one.layers))
    return tried.filter(one => one.layers === most && most > 0).slice(0, 1)
  })
  promising.sort((a, b) => welcome(b.lever, b.layers) - welcome(a.lever, a.layers))
  return promising.slice(0, TOLD).flatMap(({ lever, changed }) => gainOf(scene, lever, changed) ?? [])
}

/** Nights and waiting upset a crew more than water or speed: their layers count half. */
const welcome = ({ kind }: Pick<Lever, 'kind'>, layers: number): number =>
  kind === 'night-start' || kind === 'next-day' ? layers / 2 : layers

const layersGained = (scene: LiftScene, changed: LiftScene | undefined): number =>
  changed ? changed.lift.layers - scene.lift.layers : 0

function gainOf(scene: LiftScene, lever: Lever, sampled: LiftScene | undefined): LayerGain | undefined {
  const changed = sampled && asked(sampled)
  const layers = layersGained(scene, changed)
  if (!changed || layers <= 0) return undefined
  return {
    lever: lever.kind,
    setting: lever.setting,
    unit: leverUnits[lever.kind],
    layers,
    bindsNext: whyNoTaller(changed).binding,
  }
}

/** The lift as the physics lets it stand; undefined if none of it does. */
function asked(scene: LiftScene): LiftScene | undefined {
  const ground: Ground = { ...scene.ground, standing: 'asked' }
  const { s, below, start, ends } = scene.lift
  const { layers, safety } = standingOf(ground, ground.sections[s]!, below, start, ends)
  if (layers < 1) return undefined
  const lift = { ...scene.lift, layers, safety, ends: ends.slice(0, layers) }
  const lifts = scene.plan.lifts.map(one => (one === scene.lift ? lift : one))
  return { ...scene, ground, lift, plan: { ...scene.plan, lifts } }
}

/** The lift printed again with the lever pulled, on sampled standing. */
const again = (scene: LiftScene, lever: Lever, ground: Ground): LiftScene | undefined =>
  lever.kind === 'next-day' ? nextDayAgain({ ...scene, ground }) : sameDayAgain(scene, ground)

/** The day printed again on the changed ground: the lifts before this one as they were, this one as tall as it goes. */
function sameDayAgain(scene: LiftScene, ground: Ground): LiftScene | undefined {
  const number = scene.plan.lifts.indexOf(scene.lift)
  const before = scene.plan.lifts.slice(0, number)
  const order = [...before, scene.lift].map(lift => lift.s)
  const wish = (s: number) => before.find(lift => lift.s === s)?.layers ?? Number.POSITIVE_INFINITY
  const day = ground.days.find(one => one.date === scene.plan.day.date)
  if (!day || day.off) return undefined
  const plans = dayBegins(ground, day, scene.stand).flatMap(
    begin => fillDay(ground, scene.stand, day, begin, order, wish, scene.start) ?? [],
  )
  return tallest(scene, ground, plans)
}

/** The section alone on the next day worked, from where it stands before this lift. */
function nextDayAgain(scene: LiftScene): LiftScene | undefined {
  const { ground, plan, stand } = scene
  const day = ground.days.find(one => one.date > plan.day.date && !one.off)
  if (!day) return undefined
  const plans = dayBegins(ground, day, stand).flatMap(
    begin =>
      fillDay(ground, stand, day, begin, [scene.lift.s], () => Number.POSITIVE_INFINITY, scene.start) ?? [],
  )
  return tallest(scene, ground, plans)
}

function tallest(scene: LiftScene, ground: Ground, plans: readonly DayPlan[]): LiftScene | undefined {
  const scenes = plans.flatMap(plan => {
    const lift = plan.lifts.find(one => one.s === scene.lift.s)
    return lift ? [{ ...scene, ground, plan, lift, printed: printedBefore(ground, scene, plan) }] : []
  })
  return scenes.reduce<LiftScene | undefined>(
    (best, one) => (best === undefined || one.lift.layers > best.lift.layers ? one : best),
    undefined,
  )
}

function printedBefore(ground: Ground, scene: LiftScene, plan: DayPlan): number {
  const volumeOf = (lifts: DayPlan['lifts']) => lifts.reduce((sum, lift) => sum + liftVolume(ground, lift), 0)
  const own = scene.plan.lifts.slice(0, scene.plan.lifts.indexOf(scene.lift))
  const again = plan.lifts.slice(
    0,
    plan.lifts.findIndex(lift => lift.s === scene.lift.s),
  )
  return scene.printed - volumeOf(own) + volumeOf(again)
}
