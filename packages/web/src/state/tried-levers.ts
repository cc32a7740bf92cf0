import { type Lever, type LeverRow, leverSettings, leversFor, tryLevers } from '@dawnlift/core/campaign'
import { campaignInput, type Plan } from '@dawnlift/core/plan'

/** Levers pulled on a standing plan, each planned for real. */
export interface TriedLevers {
  readonly asPlanned: LeverRow
  /** Soonest finish first. */
  readonly rows: readonly LeverRow[]
  readonly bestPair?: LeverRow
}

/** Pairs are looked for among so many of the best. */
const paired = 3

/** Every lever that could move a limit this plan meets, mildest setting first. */
function leversOf(plan: Plan): readonly Lever[] {
  const input = inputOf(plan)
  const lifts = plan.campaign.days.flatMap(day => day.lifts)
  const met = new Set([
    ...lifts.map(lift => lift.binding.kind),
    ...plan.campaign.idleDays.map(({ why }) => why.kind),
  ])
  const kinds = new Set([...met].flatMap(kind => leversFor[kind] ?? []))
  return [...kinds].flatMap(kind => leverSettings(input, kind))
}

const inputOf = ({ job, sections, bands, routes, campaign }: Plan) =>
  campaignInput(job, sections, bands, routes, campaign.hours)

/** One lever after the other, so that somebody can see how far it is. */
export function triedLevers(plan: Plan, progress: (stage: string, share: number) => void): TriedLevers {
  const input = inputOf(plan)
  const levers = leversOf(plan)
  let asPlanned = tryLevers(input, []).asPlanned
  const rows: LeverRow[] = []
  for (const [index, lever] of levers.entries()) {
    progress(lever.kind, index / (levers.length + 2))
    const table = tryLevers(input, [lever])
    asPlanned = table.asPlanned
    rows.push(...table.rows)
  }
  rows.sort((a, b) => a.finish - b.finish || a.siteTime - b.siteTime)
  progress('pairs', levers.length / (levers.length + 2))
  const { bestPair } = tryLevers(input, bestOfEachKind(rows))
  return bestPair ? { asPlanned, rows, bestPair } : { asPlanned, rows }
}

function bestOfEachKind(rows: readonly LeverRow[]): readonly Lever[] {
  const best = new Map<string, Lever>()
  for (const { levers } of rows)
    for (const lever of levers) if (lever.kind !== 'own' && !best.has(lever.kind)) best.set(lever.kind, lever)
  return [...best.values()].slice(0, paired)
}
