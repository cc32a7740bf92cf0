import type { Point } from '../../geometry/index.js'
import type { Metres } from '../../quantity/index.js'
import { lineMesh, type ShellLine } from './line-mesh.js'
import type { PlanEdge, PlanMesh } from './plan-mesh.js'

/** Corners of plans this close are one: a third of a usual bead. */
const SAME: Metres = 0.015
/** A corner this near to an edge of another plan lies on it. */
const ON: Metres = 0.01

/**
 * One mesh for plans that stand over each other: where their beads run over each other they share positions and edges,
 * so that elements of a row meet those below. `planOf[row]` is the plan each row of elements has.
 */
export function bandMesh(
  plans: readonly (readonly ShellLine[])[],
  planOf: readonly number[],
  piece: Metres,
): PlanMesh {
  const positions: Point[] = []
  const corners = plans.map(lines => {
    const mesh = lineMesh(lines, piece, 'corners')
    const shared = mesh.positions.map(point => nearestOf(positions, point) ?? positions.push(point) - 1)
    return mesh.edges.map(edge => ({ ...edge, from: shared[edge.from]!, to: shared[edge.to]! }))
  })
  const beds = positions.slice()
  const cuts = new Map<string, number[]>()
  const stacked = new Map<string, Stack>()
  corners.forEach((edges, plan) => {
    const seen = new Map<string, number>()
    for (const edge of edges.flatMap(edge => splitAt(beds, edge)))
      for (const part of cutUp(edge, piece, positions, cuts)) stack(stacked, seen, part, plan, plans.length)
  })
  const edges = [...stacked.values()].map(
    ({ byPlan, hangs, ...edge }): PlanEdge => ({
      ...edge,
      rows: planOf.map(plan => byPlan[plan]!),
      hangs,
    }),
  )
  return { positions, edges: edges.filter(({ rows }) => rows!.some(thickness => thickness > 0)) }
}

interface Stack extends PlanEdge {
  readonly byPlan: number[]
  hangs: boolean
}

function stack(
  stacked: Map<string, Stack>,
  seen: Map<string, number>,
  edge: PlanEdge,
  plan: number,
  plans: number,
): void {
  const [from, to] = edge.from < edge.to ? [edge.from, edge.to] : [edge.to, edge.from]
  if (from === to) return
  // two beads of one plan may run between the same corners
  const times = seen.get(`${from}-${to}`) ?? 0
  seen.set(`${from}-${to}`, times + 1)
  const key = `${from}-${to}-${times}`
  const own = stacked.get(key) ?? {
    from,
    to,
    thickness: edge.thickness,
    byPlan: new Array<number>(plans).fill(0),
    hangs: true,
  }
  own.byPlan[plan] = edge.thickness
  if (!edge.hangs) own.hangs = false
  stacked.set(key, own)
}

function nearestOf(positions: readonly Point[], [x, y]: Point): number | undefined {
  let [best, least]: [number | undefined, number] = [undefined, SAME]
  positions.forEach(([a, b], i) => {
    const away = Math.hypot(a - x, b - y)
    if (away < least) [best, least] = [i, away]
  })
  return best
}

/** An edge cut at every corner of any plan that lies on it. */
function splitAt(positions: readonly Point[], edge: PlanEdge): readonly PlanEdge[] {
  const [a, b] = [positions[edge.from]!, positions[edge.to]!]
  const length = Math.hypot(b[0] - a[0], b[1] - a[1])
  const [cosine, sine] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
  const within = positions.flatMap(([x, y], index) => {
    const along = (x - a[0]) * cosine + (y - a[1]) * sine
    const aside = Math.abs((y - a[1]) * cosine - (x - a[0]) * sine)
    return along > SAME && along < length - SAME && aside < ON ? [{ index, along }] : []
  })
  const stops = within.sort((p, q) => p.along - q.along).map(({ index }) => index)
  const chain = [edge.from, ...stops, edge.to]
  return chain.slice(1).map((to, i) => ({ ...edge, from: chain[i]!, to }))
}

/** Equal pieces between two corners, the same ones for every plan. */
function cutUp(
  edge: PlanEdge,
  piece: Metres,
  positions: Point[],
  cuts: Map<string, number[]>,
): readonly PlanEdge[] {
  const [from, to] = edge.from < edge.to ? [edge.from, edge.to] : [edge.to, edge.from]
  const [a, b] = [positions[from]!, positions[to]!]
  const count = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / piece - 1e-6))
  const key = `${from}-${to}`
  const between =
    cuts.get(key) ??
    Array.from({ length: count - 1 }, (_, i) => {
      const share = (i + 1) / count
      return positions.push([a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share]) - 1
    })
  cuts.set(key, between)
  const chain = [from, ...between, to]
  return chain.slice(1).map((end, i) => ({ ...edge, from: chain[i]!, to: end }))
}
