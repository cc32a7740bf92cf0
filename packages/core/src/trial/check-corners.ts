import type { Job } from '../job/index.js'
import type { Machine } from '../machine/index.js'
import type { Finding } from '../result/index.js'
import { movesOf, type Pass, type SectionRoutes, speedProfile } from '../route/index.js'
import { cornerWidening, TOLERATED } from './corner-trial.js'
import { chainsOf } from './pump-chains.js'

/** A corner taken without a stop, and how slow the nozzle is there. */
interface Corner {
  readonly bead: string
  readonly point: readonly [number, number]
  /** Speed in the corner over the speed the pump is set for. */
  readonly slowDown: number
}

/**
 * Where beads swell over a tenth of their width because the nozzle slows in a corner and the pump does not follow: one finding
 * for the worst of them. Nothing where corners were not measured.
 */
export function checkCorners(
  routes: readonly SectionRoutes[],
  { machine }: Pick<Job, 'machine'>,
): readonly Finding[] {
  const swelling = machine.laying?.swelling ?? 0
  if (swelling <= 0) return []
  const slowest = (1 + TOLERATED) ** (-1 / swelling)
  const slow = routes
    .flatMap(section => section.routes.flatMap(chainsOf))
    .flatMap(chain => cornersOf(chain, machine))
    .filter(({ slowDown }) => slowDown < slowest)
  const [first] = slow
  if (!first) return []
  const worst = slow.reduce((a, b) => (b.slowDown < a.slowDown ? b : a), first)
  const widening = cornerWidening(worst.slowDown, swelling)
  return [
    {
      check: 'corner-swelling',
      at: worst.bead,
      point: worst.point,
      demand: widening,
      capacity: 1 + TOLERATED,
      unit: '',
      source: 'corner trials of the job',
      verdict: 'warn',
      say: `Beads swell over a tenth of their width at ${slow.length} ${slow.length === 1 ? 'corner' : 'corners'}, most in bead ${worst.bead}: ${widening.toFixed(2)} times where the nozzle slows to ${Math.round(100 * worst.slowDown)} % of its speed. Round the corners wider or print slower: ${Math.round(100 * slowest)} % keeps the bead.`,
    },
  ]
}

function cornersOf(chain: readonly Pass[], machine: Machine): readonly Corner[] {
  const pieces = chain.flatMap((pass, i) =>
    movesOf(pass, chain[i + 1], chain[i - 1], machine).map((move, piece) => ({ pass, piece, move })),
  )
  const { ends } = speedProfile(
    pieces.map(({ move }) => move),
    machine,
  )
  return pieces.flatMap(({ pass, piece, move }, i) => {
    const before = pieces[i - 1]?.move
    const speed = ends[i]!
    if (!before || move.afterStop || speed === 0) return []
    const slowDown = speed / Math.max(before.speed, move.speed)
    return [{ bead: pass.bead, point: pass.path.points[piece]!, slowDown }]
  })
}
