import { thicknessIn } from './plan-mesh.js'
import type { ShellSystem } from './shell-model.js'

/** Pieces end to end with the same beads row by row: runs of one shape have one stiffness. */
export interface ShellRun {
  /** Edges in order, and the positions before, between and after them. */
  readonly pieces: readonly number[]
  readonly positions: readonly number[]
  /** Direction of the first piece, and how far each is turned from it. */
  readonly heading: number
  readonly turns: readonly number[]
}

/** Longer runs are cut: a long leaf then has many runs of one kind. */
const MOST = 4

interface Step {
  readonly edge: number
  readonly from: number
  readonly to: number
  readonly heading: number
}

/** All edges of a plan as runs between the positions where beads end, change or meet. */
export function shellRuns(system: ShellSystem): readonly ShellRun[] {
  const touching = edgesAt(system)
  const inside = touching.map((_, position) => isInside(system, touching, position))
  const done = new Uint8Array(system.edges.length)
  const chains: Step[][] = []
  const follow = (start: number, first: number) => {
    const chain: Step[] = []
    let [position, edge]: [number, number | undefined] = [start, first]
    while (edge !== undefined && !done[edge]) {
      done[edge] = 1
      const step = stepAlong(system, edge, position)
      chain.push(step)
      position = step.to
      edge = inside[position] ? touching[position]!.find(next => !done[next]) : undefined
    }
    if (chain.length > 0) chains.push(chain)
  }
  touching.forEach((edges, position) => {
    if (!inside[position]) for (const edge of edges) follow(position, edge)
  })
  // what is left goes round without a joint
  system.edges.forEach(({ from }, edge) => {
    if (!done[edge]) follow(from, edge)
  })
  return chains.flatMap(cutUp)
}

function edgesAt({ shell, edges }: ShellSystem): readonly (readonly number[])[] {
  const touching: number[][] = shell.mesh.positions.map(() => [])
  edges.forEach(({ from, to }, e) => {
    touching[from]!.push(e)
    touching[to]!.push(e)
  })
  return touching
}

/** Whether two pieces with like beads and nothing else meet at a position that nothing holds. */
function isInside({ shell }: ShellSystem, touching: readonly (readonly number[])[], position: number) {
  const [left, right, more] = touching[position]!.map(e => shell.mesh.edges[e]!)
  if (!left || !right || more || shell.held?.some(each => each.position === position)) return false
  const isLike = (row: number) => thicknessIn(left, row) === thicknessIn(right, row)
  return (
    new Set([left.from, left.to, right.from, right.to]).size === 3 &&
    Boolean(left.hangs) === Boolean(right.hangs) &&
    Array.from({ length: shell.rows }, (_, row) => row).every(isLike)
  )
}

function stepAlong({ edges }: ShellSystem, edge: number, from: number): Step {
  const { from: start, to: end, cosine, sine } = edges[edge]!
  return from === start
    ? { edge, from, to: end, heading: Math.atan2(sine, cosine) }
    : { edge, from, to: start, heading: Math.atan2(-sine, -cosine) }
}

/** Runs of equal length or nearly so; a chain that comes back to where it began is two at least. */
function cutUp(chain: readonly Step[]): readonly ShellRun[] {
  const round = chain[0]!.from === chain[chain.length - 1]!.to
  const count = Math.max(Math.ceil(chain.length / MOST), round ? 2 : 1)
  return Array.from({ length: count }, (_, i) => {
    const [from, to] = [i, i + 1].map(part => Math.round((chain.length * part) / count))
    const steps = chain.slice(from, to)
    return {
      pieces: steps.map(({ edge }) => edge),
      positions: [steps[0]!.from, ...steps.map(step => step.to)],
      heading: steps[0]!.heading,
      turns: steps.map(({ heading }) => wholeTurns(heading - steps[0]!.heading)),
    }
  })
}

const wholeTurns = (angle: number): number => angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI))
