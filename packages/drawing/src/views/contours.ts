import type { PaperPoint } from '../paper/index.js'

/** Values on a grid of paper places: `values[column][row]`. */
export interface Field {
  readonly xs: readonly number[]
  readonly ys: readonly number[]
  readonly values: readonly (readonly number[])[]
}

interface Corner {
  readonly at: PaperPoint
  readonly value: number
}

/** Rings that together hold all of the field at or above a level, values between grid places taken as linear. */
export function atOrAbove(field: Field, level: number): readonly (readonly PaperPoint[])[] {
  return quads(field).flatMap(corners => {
    const ring = corners.flatMap((corner, index) => {
      const next = corners[(index + 1) % corners.length]!
      const kept = corner.value >= level ? [corner.at] : []
      return corner.value >= level === next.value >= level ? kept : [...kept, crossing(corner, next, level)]
    })
    return ring.length > 2 ? [ring] : []
  })
}

/** Lines along which the field has one value, chained as far as they go. */
export function isoLines(field: Field, level: number): readonly (readonly PaperPoint[])[] {
  const pieces = quads(field).flatMap(corners => {
    const cuts = corners.flatMap((corner, index) => {
      const next = corners[(index + 1) % corners.length]!
      return corner.value >= level === next.value >= level ? [] : [crossing(corner, next, level)]
    })
    return cuts.length === 2 ? [cuts] : cuts.length === 4 ? [cuts.slice(0, 2), cuts.slice(2)] : []
  })
  return chained(pieces)
}

function quads({ xs, ys, values }: Field): readonly (readonly Corner[])[] {
  const corner = (i: number, j: number): Corner => ({ at: [xs[i]!, ys[j]!], value: values[i]![j]! })
  return xs
    .slice(1)
    .flatMap((_, i) =>
      ys.slice(1).map((_, j) => [corner(i, j), corner(i + 1, j), corner(i + 1, j + 1), corner(i, j + 1)]),
    )
}

function crossing(a: Corner, b: Corner, level: number): PaperPoint {
  const share = (level - a.value) / (b.value - a.value)
  return [a.at[0] + share * (b.at[0] - a.at[0]), a.at[1] + share * (b.at[1] - a.at[1])]
}

const key = ([x, y]: PaperPoint): string => `${x.toFixed(4)} ${y.toFixed(4)}`

/** Pieces with an end in common become one line. */
function chained(pieces: readonly (readonly PaperPoint[])[]): readonly (readonly PaperPoint[])[] {
  const ends = new Map<string, PaperPoint[]>()
  const lines = new Set<PaperPoint[]>()
  for (const piece of pieces) {
    let line = [...piece]
    for (const atStart of [true, false]) {
      const meet = atStart ? line[0]! : line.at(-1)!
      const other = ends.get(key(meet))
      if (!other || other === line) continue
      lines.delete(other)
      for (const end of [other[0]!, other.at(-1)!]) ends.delete(key(end))
      const forward = key(other.at(-1)!) === key(meet) ? other : [...other].reverse()
      line = atStart ? [...forward, ...line.slice(1)] : [...line, ...[...forward].reverse().slice(1)]
    }
    lines.add(line)
    ends.set(key(line[0]!), line)
    ends.set(key(line.at(-1)!), line)
  }
  return [...lines]
}
