import type { LimitKind } from '../limit/index.js'
import type { Instant, Seconds } from '../quantity/index.js'
import type { Campaign } from './campaign.js'
import type { CampaignInput } from './campaign-input.js'
import { type Lever, pullLever } from './lever.js'
import { scheduleCampaign } from './schedule-campaign.js'
import { calendarDays } from './work-day.js'

/** A lever of the caller's own: more sections, a second crew, another mix. `replan` gives the changed input. */
export interface OwnLever {
  readonly kind: 'own'
  readonly name: string
  readonly replan: () => CampaignInput | undefined
}

export type AnyLever = Lever | OwnLever

/** A campaign with one or two levers pulled, planned for real. */
export interface LeverRow {
  readonly levers: readonly AnyLever[]
  readonly printDays: number
  readonly finished: boolean
  readonly finish: Instant
  readonly finishDate: string
  /** Calendar days sooner than the plan as it stands; negative: later. */
  readonly daysGained: number
  readonly printTime: Seconds
  readonly siteTime: Seconds
  readonly lifts: number
  /** The limit that then stops most layers. */
  readonly bindsNext?: LimitKind
}

export interface LeverTable {
  readonly asPlanned: LeverRow
  /** Soonest finish first. Levers that do not apply to this job are left out. */
  readonly rows: readonly LeverRow[]
  readonly bestPair?: LeverRow
}

/** Pairs are tried among so many of the best levers. */
const PAIRED = 4

/** Every lever pulled by itself and planned anew, then the best few in pairs. */
export function tryLevers(input: CampaignInput, levers: readonly AnyLever[]): LeverTable {
  const asPlanned = leverRow([], scheduleCampaign(input, 'brisk'))
  const rows = levers.flatMap(lever => leveredRow(input, [lever], asPlanned) ?? []).sort(compareRows)
  const best = rows.slice(0, PAIRED).flatMap(row => row.levers)
  const pairs = best.flatMap((a, i) =>
    best.slice(i + 1).flatMap(b => (a.kind === b.kind ? [] : (leveredRow(input, [a, b], asPlanned) ?? []))),
  )
  const bestPair = pairs.sort(compareRows)[0]
  return bestPair ? { asPlanned, rows, bestPair } : { asPlanned, rows }
}

function leveredRow(
  input: CampaignInput,
  levers: readonly AnyLever[],
  asPlanned: LeverRow,
): LeverRow | undefined {
  // The caller's own levers make a new input; the others change it further.
  const own = levers.filter(lever => lever.kind === 'own')
  const plain = levers.filter(lever => lever.kind !== 'own')
  if (own.length > 1) return undefined
  let changed: CampaignInput | undefined = own[0] ? own[0].replan() : input
  for (const lever of plain) changed = changed && pullLever(changed, lever)
  if (!changed) return undefined
  const row = leverRow(levers, scheduleCampaign(changed, 'brisk'))
  const isComparable =
    row.finishDate !== '' && asPlanned.finishDate !== '' && row.finished === asPlanned.finished
  return { ...row, daysGained: isComparable ? calendarDays(row.finishDate, asPlanned.finishDate) : 0 }
}

function leverRow(levers: readonly AnyLever[], campaign: Campaign): LeverRow {
  const lifts = campaign.days.flatMap(day => day.lifts)
  const bindsNext = mostBinding(campaign)
  return {
    levers,
    printDays: campaign.days.length,
    finished: campaign.finished,
    finish: campaign.finish,
    finishDate: campaign.days.at(-1)?.date ?? '',
    daysGained: 0,
    printTime: lifts.reduce((sum, lift) => sum + lift.end - lift.start, 0),
    siteTime: campaign.days.reduce((sum, day) => sum + day.end - day.start, 0),
    lifts: lifts.length,
    ...(bindsNext === undefined ? {} : { bindsNext }),
  }
}

/** Ends that are drawn: no lever moves them. */
const drawnEnds: readonly LimitKind[] = ['top-of-wall', 'lintel-head', 'pour-level']

/** The limit that takes most layers off the lifts; lintels and pours only if there is no other, the top of the wall never. */
export function mostBinding(campaign: Campaign): LimitKind | undefined {
  const lost = new Map<LimitKind, number>()
  for (const lift of campaign.days.flatMap(day => day.lifts)) {
    const missing = lift.wishedLayers - (lift.lastLayer - lift.firstLayer + 1)
    lost.set(lift.binding.kind, (lost.get(lift.binding.kind) ?? 0) + missing + 1e-3)
  }
  lost.delete('top-of-wall')
  const most = [...lost].sort((x, y) => y[1] - x[1]).map(([kind]) => kind)
  return most.find(kind => !drawnEnds.includes(kind)) ?? most[0]
}

const compareRows = (a: LeverRow, b: LeverRow): number =>
  Number(b.finished) - Number(a.finished) || a.finish - b.finish || a.siteTime - b.siteTime
