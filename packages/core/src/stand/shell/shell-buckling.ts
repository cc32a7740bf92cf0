import { coarseShell, refined } from './coarse-shell.js'
import { largestEigenvalue } from './lanczos.js'
import { flexibilityTimes, type LoadedShell, loadedShell, movesOf, pushedBy } from './loaded-shell.js'
import { type ModeShape, modeShape } from './mode-shape.js'
import { edgeLength, thicknessIn } from './plan-mesh.js'
import { shellFactor } from './shell-factor.js'
import { levelsOf, type Shell } from './shell-model.js'

/** Called now and then with the share done; answering false stops the work. */
export type Progress = (share: number) => boolean

export type ShellBuckling =
  | {
      readonly kind: 'buckles'
      /** Self-weight may be this many times what it is. */
      readonly factor: number
      readonly mode: ModeShape
      readonly residual: number
      readonly unknowns: number
      /** Of the walls [N]. */
      readonly weight: number
    }
  /** No factor above zero: nothing is compressed. */
  | { readonly kind: 'none' }
  | { readonly kind: 'cancelled' }

/**
 * Lowest factor on self-weight at which a section's walls buckle, and how they move.
 * Linear buckling: (K − λ·G)·x = 0 with G from the membrane forces of a static solution under self-weight.
 *
 * Source   closed form; eight-node Mindlin shells with reduced integration after [Zienkiewicz1971], from memory;
 *          compared with CalculiX 2.20 on the same meshes.
 * Range    small strains: fresh material that shortens by more than a few per cent is beyond linear buckling.
 * Assumes  clamped foot; beads meet on their middle lines; perfect geometry: apply the imperfection factor.
 */
export function shellBuckling(shell: Shell, progress: Progress = () => true): ShellBuckling {
  const start = coarseMoves(shell, share => progress(0.3 * share))
  if (start === 'cancelled') return { kind: 'cancelled' }
  const loaded = loadedShell(shell, share => progress(0.3 + 0.4 * share))
  if (loaded === 'cancelled') return { kind: 'cancelled' }
  const found = lowestMode(loaded, RESIDUAL, share => progress(0.7 + 0.3 * share), start?.(loaded))
  if (!found) return { kind: 'cancelled' }
  // Nothing compressed: what is left above zero is rounding against the stiffest answer a wall could give.
  if (!(found.value > 1e-9)) return { kind: 'none' }
  return {
    kind: 'buckles',
    factor: 1 / found.value,
    mode: modeShape(loaded.factor.system, movesOf(loaded, found.vector)),
    residual: found.residual,
    unknowns: found.vector.length,
    weight: weightOf(shell),
  }
}

/** A true factor of the mesh lies within this share, and as a rule within a hundredth of it. */
const RESIDUAL = 1e-4
/** Fewer rows are a start only. */
const COARSE_RESIDUAL = 1e-3

function lowestMode(loaded: LoadedShell, tolerance: number, goOn: Progress, start?: Float64Array) {
  return largestEigenvalue(
    loaded.load.length,
    x => flexibilityTimes(loaded, x),
    share => goOn(Math.min(1, share)),
    { tolerance, ...(start ? { start } : {}) },
  )
}

/** How the same plan buckles in fewer rows, to be carried over to a loaded shell as the start of its search. */
function coarseMoves(shell: Shell, goOn: Progress) {
  const coarse = coarseShell(shell)
  if (!coarse) return undefined
  const loaded = loadedShell(coarse.shell, share => goOn(0.5 * share))
  if (loaded === 'cancelled') return loaded
  const found = lowestMode(loaded, COARSE_RESIDUAL, share => goOn(0.5 + 0.5 * share))
  if (!found) return 'cancelled'
  const moves = movesOf(loaded, found.vector)
  return (fine: LoadedShell) =>
    pushedBy(fine, refined(loaded.factor.system, moves, fine.factor.system, coarse.rowOf))
}

/**
 * Whether a section's walls bear this many times their weight: K − factor·G is positive, so by Sturm's count no factor at
 * which they buckle lies below. Proof of what `shellBuckling` found, at several times its cost.
 */
export function shellStands(shell: Shell, factor: number): boolean {
  const loaded = loadedShell(shell, () => true)
  if (loaded === 'cancelled') return false
  const { rows, matrices } = loaded.geometric
  const pushed = (edge: number, row: number) => {
    const at = (edge * rows + row) * 64
    return matrices.subarray(at, at + 64).map(value => -factor * value)
  }
  return shellFactor(loaded.factor.system, () => true, pushed) !== 'not positive'
}

export function weightOf(shell: Shell): number {
  const { mesh, density, gravity } = shell
  const levels = levelsOf(shell)
  let volume = 0
  for (const edge of mesh.edges)
    for (let row = 0; row < shell.rows; row++)
      volume += edgeLength(mesh, edge) * thicknessIn(edge, row) * (levels[row + 1]! - levels[row]!)
  return volume * density * gravity
}
