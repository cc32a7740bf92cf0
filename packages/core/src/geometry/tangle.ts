import type { Metres } from '../quantity/index.js'
import type { Ring } from './ring.js'

/** Edges nearer than this are taken to meet. */
const margin: Metres = 1e-7

/** Whether any two edges of the rings meet, neighbours on their ring apart: edges in order of x, each against those it laps. */
export function tangled(rings: readonly Ring[]): boolean {
  const edges = edgesOf(rings)
  const { count, x0, x1, y0, y1 } = edges
  const order = Array.from({ length: count }, (_, i) => i).sort(
    (i, k) => Math.min(x0[i]!, x1[i]!) - Math.min(x0[k]!, x1[k]!),
  )
  let active: number[] = []
  for (const i of order) {
    const from = Math.min(x0[i]!, x1[i]!) - margin
    active = active.filter(k => Math.max(x0[k]!, x1[k]!) >= from)
    const [low, high] = [Math.min(y0[i]!, y1[i]!) - margin, Math.max(y0[i]!, y1[i]!) + margin]
    for (const k of active)
      if (Math.max(y0[k]!, y1[k]!) >= low && Math.min(y0[k]!, y1[k]!) <= high && meet(edges, i, k))
        return true
    active.push(i)
  }
  return false
}

interface Edges {
  readonly count: number
  readonly x0: Float64Array
  readonly y0: Float64Array
  readonly x1: Float64Array
  readonly y1: Float64Array
  /** The edge each goes on into. */
  readonly next: Int32Array
}

function edgesOf(rings: readonly Ring[]): Edges {
  const count = rings.reduce((sum, ring) => sum + ring.length, 0)
  const [x0, y0, x1, y1] = [0, 1, 2, 3].map(() => new Float64Array(count)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ]
  const next = new Int32Array(count)
  let first = 0
  for (const ring of rings) {
    ring.forEach(([x, y], i) => {
      const [here, on] = [first + i, first + ((i + 1) % ring.length)]
      const [u, v] = ring[on - first]!
      x0[here] = x
      y0[here] = y
      x1[here] = u
      y1[here] = v
      next[here] = on
    })
    first += ring.length
  }
  return { count, x0, y0, x1, y1, next }
}

function meet(edges: Edges, i: number, k: number): boolean {
  if (edges.next[i] === k || edges.next[k] === i) return false
  return !parted(edges, i, k) && !parted(edges, k, i)
}

/** Whether the second edge lies to one side of the line of the first, by more than the margin. */
function parted({ x0, y0, x1, y1 }: Edges, i: number, k: number): boolean {
  const [x, y] = [x0[i]!, y0[i]!]
  const [u, v] = [x1[i]! - x, y1[i]! - y]
  const width = margin * Math.sqrt(u * u + v * v)
  const [a, b] = [u * (y0[k]! - y) - v * (x0[k]! - x), u * (y1[k]! - y) - v * (x1[k]! - x)]
  return (a > width && b > width) || (a < -width && b < -width)
}
