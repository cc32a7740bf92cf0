export interface Wythe {
  readonly cells: readonly number[]
  readonly from: number
  readonly to: number
}

/** Cells that touch belong to one wythe; a gap wider than a cell is the cavity. */
export function wythes(depths: readonly number[], thickness: number): readonly Wythe[] {
  const half = depths[0]!
  const gap = depths.findIndex((depth, index) => index > 0 && depth - depths[index - 1]! > 2.5 * half)
  const all = depths.map((_, index) => index)
  if (gap < 0) return [{ cells: all, from: 0, to: thickness }]
  return [
    { cells: all.slice(0, gap), from: 0, to: depths[gap - 1]! + half },
    { cells: all.slice(gap), from: depths[gap]! - half, to: thickness },
  ]
}

/** Share of the picture below a depth. A cavity holds no heat to show and is drawn narrow: an eighth of the height. */
export function folded(depths: readonly number[], thickness: number, depth: number): number {
  const [near, far] = wythes(depths, thickness)
  if (!near || !far) return depth / thickness
  const solid = near.to + thickness - far.from
  const share = (metres: number) => (0.875 * metres) / solid
  if (depth <= near.to) return share(depth)
  if (depth >= far.from) return 1 - share(thickness - depth)
  return share(near.to) + (0.125 * (depth - near.to)) / (far.from - near.to)
}
