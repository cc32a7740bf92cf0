import { clockText, localTime } from '../clock/index.js'
import type { Instant } from '../quantity/index.js'
import type { Campaign, Hold, Lift } from './campaign.js'

/** One thing somebody was told that no longer holds. */
export interface CampaignChange {
  /** The crew for lifts; for holds whoever is called for that reason: `ref` is the lintel's, insert's or pour's id. */
  readonly who: 'crew' | Hold['reason']
  readonly ref: string
  readonly section: string
  readonly kind: 'moved' | 'taller' | 'shorter' | 'new' | 'dropped'
  readonly from?: Instant
  readonly to?: Instant
  readonly say: string
}

/** Shifts of a start by less than this need no call [s]: common practice, no source. */
const WORTH_A_CALL = 1800

/** What changed between the campaign told before and the new one, from now on, soonest first. */
export function changesBetween(
  told: Campaign,
  now: Campaign,
  at: Instant,
  zone: string,
): readonly CampaignChange[] {
  const changes = [...liftChanges(told, now, at, zone), ...holdChanges(told, now, at, zone)]
  return changes.sort((a, b) => (a.to ?? a.from ?? 0) - (b.to ?? b.from ?? 0))
}

const liftsOf = (campaign: Campaign): readonly Lift[] => campaign.days.flatMap(day => day.lifts)

const moment = (at: Instant, zone: string): string => `${localTime(at, zone).date} ${clockText(at, zone)}`

/** Lifts are the same when they carry the same name: section and running number. */
function liftChanges(told: Campaign, now: Campaign, at: Instant, zone: string): readonly CampaignChange[] {
  const before = new Map(liftsOf(told).map(lift => [lift.id, lift]))
  const after = new Map(liftsOf(now).map(lift => [lift.id, lift]))
  const dropped = [...before.values()].filter(lift => lift.start >= at && !after.has(lift.id))
  return [
    ...[...after.values()].flatMap(lift => liftChange(before.get(lift.id), lift, zone)),
    ...dropped.map((lift): CampaignChange => {
      const say = `Lift ${lift.id} of ${moment(lift.start, zone)} is not needed any more.`
      return { who: 'crew', ref: lift.id, section: lift.section, kind: 'dropped', from: lift.start, say }
    }),
  ]
}

function liftChange(before: Lift | undefined, lift: Lift, zone: string): readonly CampaignChange[] {
  const base = { who: 'crew' as const, ref: lift.id, section: lift.section, to: lift.start }
  const layers = `layers ${lift.firstLayer} to ${lift.lastLayer}`
  if (!before) {
    return [{ ...base, kind: 'new', say: `New lift ${lift.id}: ${layers}, ${moment(lift.start, zone)}.` }]
  }
  const changes: CampaignChange[] = []
  if (Math.abs(before.start - lift.start) >= WORTH_A_CALL) {
    const say = `Lift ${lift.id} starts ${moment(lift.start, zone)} instead of ${moment(before.start, zone)}.`
    changes.push({ ...base, kind: 'moved', from: before.start, say })
  }
  if (before.lastLayer !== lift.lastLayer) {
    const kind = lift.lastLayer > before.lastLayer ? 'taller' : 'shorter'
    const say = `Lift ${lift.id} goes up to layer ${lift.lastLayer} instead of ${before.lastLayer}.`
    changes.push({ ...base, kind, from: before.start, say })
  }
  return changes
}

/** Those called for a lintel, an insert, a pour or an inspection whose moment moved. */
function holdChanges(told: Campaign, now: Campaign, at: Instant, zone: string): readonly CampaignChange[] {
  const before = holdMoments(told)
  return [...holdMoments(now)].flatMap(([key, hold]): readonly CampaignChange[] => {
    const was = before.get(key)
    if (!was || was.at < at || Math.abs(was.at - hold.at) < WORTH_A_CALL) return []
    const say = `${hold.hold.ref} on section ${hold.section}: ${moment(hold.at, zone)} instead of ${moment(was.at, zone)}.`
    const { reason, ref } = hold.hold
    return [{ who: reason, ref, section: hold.section, kind: 'moved', from: was.at, to: hold.at, say }]
  })
}

interface HoldMoment {
  readonly hold: Hold
  readonly section: string
  readonly at: Instant
}

/** When each hold begins: after its layer, or before the lift that starts on it. */
function holdMoments(campaign: Campaign): ReadonlyMap<string, HoldMoment> {
  const moments = new Map<string, HoldMoment>()
  for (const lift of liftsOf(campaign)) {
    for (const hold of lift.holds) {
      const end = lift.layerEnds[hold.afterLayer - lift.firstLayer]
      const at = end ?? lift.start - hold.duration
      moments.set(`${lift.section}/${hold.ref}/${hold.afterLayer}`, { hold, section: lift.section, at })
    }
  }
  return moments
}
