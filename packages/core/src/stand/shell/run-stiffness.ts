import type { Pascals } from '../../quantity/index.js'
import { type BlockMatrix, blockMatrix, blockOf, type Factored, factorBlocks } from './block-cholesky.js'
import { edgeLength, thicknessIn } from './plan-mesh.js'
import { NODES, SIZE, UNKNOWNS } from './rectangle.js'
import { nodesOf, rowModuli, type ShellElement, type ShellSystem } from './shell-model.js'
import type { ShellRun } from './shell-run.js'

/**
 * The stiffness of a run in its own axes, everything between its two ends eliminated. Blocks: the middles of its n pieces,
 * then its positions, n the first and 2n the last.
 */
export interface RunStiffness {
  readonly matrix: BlockMatrix
  /** Where the blocks begin in a vector of the run. */
  readonly offsets: Int32Array
  readonly scratch: Float64Array
  /** The two blocks at its ends, and where they begin in a vector of the run. */
  readonly ends: readonly { readonly block: number; readonly at: number }[]
}

/** What two runs have in common when one stiffness serves both. */
export function runKind({ edges, fixed, offsets, shell }: ShellSystem, run: ShellRun): string {
  const { pieces, positions, turns } = run
  const first = shell.mesh.edges[pieces[0]!]!
  const lengths = pieces.map(e => nano(edgeLength(shell.mesh, shell.mesh.edges[e]!)))
  const beads = Array.from({ length: shell.rows }, (_, row) => thicknessIn(first, row))
  const inside = [...pieces.map(e => edges[e]!.middle), ...positions.slice(1, -1)]
  const held = inside.map(block => fixed.slice(offsets[block]!, offsets[block + 1]!).join(''))
  const isHeld = held.some(flags => flags.includes('1'))
  return [lengths.join(), turns.map(nano).join(), beads.join(), isHeld ? held.join('/') : ''].join('|')
}

/** In billionths: what is nearer is the same. */
const nano = (value: number): number => Math.round(value * 1e9)

/** Unknowns of the run's own nodes by level, of its middles and of its positions. */
export function runLevels({ nodes, edges }: ShellSystem, { pieces }: ShellRun) {
  const { elements, middle } = edges[pieces[0]!]!
  const used = new Uint8Array(2 * elements.length + 1)
  elements.forEach((element, row) => {
    if (element) used.fill(1, 2 * row, 2 * row + 3)
  })
  let count = 0
  const ofPosition = Int32Array.from(used, (present, level) =>
    present && level > 0 ? UNKNOWNS * count++ : -1,
  )
  return { ofMiddle: nodes.firstOf[middle]!, ofPosition }
}

/** Adds what else stiffens an element, as the 8 × 8 matrix its three displacements share. */
export type Addition = (edge: number, row: number) => Float64Array | undefined

export function runStiffness(
  system: ShellSystem,
  run: ShellRun,
  addition: Addition = () => undefined,
): RunStiffness | Exclude<Factored, 'factored'> {
  const { pieces } = run
  const count = pieces.length
  const { ofMiddle, ofPosition } = runLevels(system, run)
  const firstOf = [...pieces.map(() => ofMiddle), ofPosition, ...pieces.map(() => ofPosition)]
  const sizes = firstOf.map(levels => UNKNOWNS * levels.filter(first => first >= 0).length)
  const links = pieces.flatMap((_, k): [number, number][] => [
    [k, count + k],
    [k, count + k + 1],
    [count + k, count + k + 1],
  ])
  const matrix = blockMatrix(sizes, links, [count, 2 * count])
  assemble(system, run, matrix, firstOf, addition)
  const answer = factorBlocks(matrix, () => true)
  if (answer !== 'factored') return answer
  const offsets = new Int32Array(sizes.length + 1)
  sizes.forEach((size, i) => {
    offsets[i + 1] = offsets[i]! + size
  })
  const ends = [count, 2 * count].map(block => ({ block, at: offsets[block]! }))
  return { matrix, offsets, ends, scratch: new Float64Array(offsets[sizes.length]!) }
}

function assemble(
  system: ShellSystem,
  { pieces, positions, turns }: ShellRun,
  matrix: BlockMatrix,
  firstOf: readonly Int32Array[],
  addition: Addition,
): void {
  const { shell, edges, fixed, offsets } = system
  const count = pieces.length
  const [blocks, firsts] = [new Int32Array(NODES), new Int32Array(NODES)]
  const moduli = Array.from({ length: shell.rows }, (_, row) => rowModuli(shell, row))
  const held = matrix.sizes.map((size, block) => {
    const own = block < count ? edges[pieces[block]!]!.middle : positions[block - count]!
    const isEnd = block === count || block === 2 * count
    return isEnd ? new Uint8Array(size) : fixed.subarray(offsets[own]!, offsets[own]! + size)
  })
  pieces.forEach((e, k) => {
    const turnedOf = new Map<ShellElement, readonly Float64Array[]>()
    // a piece that is walked from its end is the same piece turned half round
    const piece = { from: count + k, to: count + k + 1, middle: k }
    const backwards = edges[e]!.from !== positions[k]
    edges[e]!.elements.forEach((element, row) => {
      if (!element) return
      const halves = turnedOf.get(element) ?? [element.low, element.high].map(half => turned(half, turns[k]!))
      turnedOf.set(element, halves)
      const sum = weighted(halves, moduli[row]!)
      const more = addition(e, row)
      if (more) addShared(sum, more, backwards)
      nodesOf({ firstOf }, piece, row, blocks, firsts)
      addElement(matrix, sum, blocks, firsts, held)
    })
  })
  held.forEach((flags, block) => {
    // A held unknown keeps a one on its diagonal and nothing else: it stays zero.
    flags.forEach((flag, a) => {
      if (flag) matrix.diagonal[block]![a * flags.length + a] = 1
    })
  })
}

function weighted([low, high]: readonly Float64Array[], [soft, stiff]: readonly [Pascals, Pascals]) {
  const sum = new Float64Array(SIZE * SIZE)
  for (let i = 0; i < sum.length; i++) sum[i] = soft * low![i]! + stiff * high![i]!
  return sum
}

/** Nodes of an element as they are seen from behind. */
const BEHIND = [1, 0, 3, 2, 4, 7, 6, 5]

function addShared(sum: Float64Array, more: Float64Array, backwards: boolean): void {
  for (let m = 0; m < NODES; m++)
    for (let n = 0; n < NODES; n++) {
      const [i, j] = backwards ? [BEHIND[m]!, BEHIND[n]!] : [m, n]
      for (let a = 0; a < 3; a++) sum[(m * UNKNOWNS + a) * SIZE + n * UNKNOWNS + a]! += more[i * NODES + j]!
    }
}

function addElement(
  matrix: BlockMatrix,
  element: Float64Array,
  blocks: Int32Array,
  firsts: Int32Array,
  held: readonly Uint8Array[],
): void {
  for (let m = 0; m < NODES; m++)
    for (let n = 0; n < NODES; n++) {
      const [i, j] = [blocks[m]!, blocks[n]!]
      if (i < 0 || j < 0 || matrix.place[i]! < matrix.place[j]!) continue
      const [target, columns] = [blockOf(matrix, i, j), matrix.sizes[j]!]
      for (let a = 0; a < UNKNOWNS; a++) {
        const row = firsts[m]! + a
        if (held[i]![row]) continue
        for (let b = 0; b < UNKNOWNS; b++) {
          const column = firsts[n]! + b
          if (!held[j]![column])
            target[row * columns + column]! += element[(m * UNKNOWNS + a) * SIZE + n * UNKNOWNS + b]!
        }
      }
    }
}

/** Tᵀ·K·T with the axes of `axesOf`: along, up and outward become x, y and up. */
function turned(local: Float64Array, turn: number): Float64Array {
  const [cosine, sine] = [Math.cos(turn), Math.sin(turn)]
  const full = local.slice()
  for (let at = 0; at < full.length; at += 3) turnThree(full, at, 1, cosine, sine)
  for (let i = 0; i < SIZE; i += 3)
    for (let j = 0; j < SIZE; j++) turnThree(full, i * SIZE + j, SIZE, cosine, sine)
  return full
}

function turnThree(x: Float64Array, at: number, stride: number, cosine: number, sine: number): void {
  const along = x[at]!
  const up = x[at + stride]!
  const outward = x[at + 2 * stride]!
  x[at] = cosine * along + sine * outward
  x[at + stride] = sine * along - cosine * outward
  x[at + 2 * stride] = up
}
