import type { Costs } from '../job/index.js'
import type { BidEstimate, Spread } from './estimate-job.js'

/** What a bid costs besides its days: the lead's own rates, crew and mix, and what has been counted. */
export interface BidCostInput {
  readonly costs: Costs
  readonly crewSize: number
  readonly density: number
  /** Water per kg of dry material. */
  readonly waterRatio: number
  /** Mix lost in the hose on each print day [m³]. */
  readonly hoseVolume: number
  readonly embeds: number
  readonly lintels: number
  /** m³ poured into columns. */
  readonly poured: number
  readonly floorArea?: number
}

export interface BidCost {
  readonly lines: readonly { readonly what: string; readonly amount: Spread; readonly how: string }[]
  readonly total: Spread
  readonly perWallFace: Spread
  readonly perFloor?: Spread
  /** The same wall face built conventionally, by the lead's own rate. */
  readonly conventional: Spread
}

const SIDES = ['low', 'likely', 'high'] as const

const each = (of: (side: (typeof SIDES)[number]) => number): Spread => ({
  low: of('low'),
  likely: of('likely'),
  high: of('high'),
})

/** Cost of an estimate by the same lines as a tally, each from its best to its worst. */
export function estimateCost(estimate: BidEstimate, input: BidCostInput): BidCost {
  const { costs, crewSize } = input
  const { printDays, siteHours, wallFace } = estimate
  const mass = each(side => (estimate.volume[side] + printDays[side] * input.hoseVolume) * input.density)
  const dry = each(side => mass[side] / (1 + input.waterRatio) / 1000)
  const line = (what: string, how: string, of: (side: (typeof SIDES)[number]) => number) => ({
    what,
    how,
    amount: each(of),
  })
  const lines = [
    line('Mobilisation', 'once', () => costs.mobilisation),
    line('Machine', 'print days', side => printDays[side] * costs.machinePerDay),
    line(
      'Crew',
      `hours on site × ${crewSize} people`,
      side => siteHours[side] * crewSize * costs.crewPerHour,
    ),
    line('Material', 't dry, hose waste included', side => dry[side] * costs.materialPerTonne),
    line('Water', 'm³ of mixing water', side => dry[side] * input.waterRatio * costs.waterPerCubicMetre),
    line('Pours', 'm³ in columns', () => input.poured * costs.pourPerCubicMetre),
    line('Protection', 'both faces', side => 2 * wallFace[side] * costs.protectionPerSquareMetre),
    line('Embeds', `${input.embeds} counted`, () => input.embeds * costs.embedEach),
    line('Lintels', `${input.lintels} counted`, () => input.lintels * costs.lintelEach),
  ]
  const total = each(side => lines.reduce((sum, { amount }) => sum + amount[side], 0))
  const { floorArea } = input
  return {
    lines,
    total,
    perWallFace: each(side => total[side] / wallFace[side]),
    ...(floorArea === undefined ? {} : { perFloor: each(side => total[side] / floorArea) }),
    conventional: each(side => wallFace[side] * costs.conventionalPerSquareMetre),
  }
}
