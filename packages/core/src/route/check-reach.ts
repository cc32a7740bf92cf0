import { type Bounds, type Path, type Point, pointBounds } from '../geometry/index.js'
import { type Machine, machinePoint } from '../machine/index.js'
import { formatPlace, formatQuantity } from '../quantity/index.js'
import type { Finding } from '../result/index.js'
import type { Band, Bead, SectionBands } from '../wall/index.js'
import { comesNear, inside, type Obstacle, obstaclesOf } from './obstacle.js'
import type { RouteRules } from './options.js'
import { distance, pointAt, type Segment, segmentsOf } from './segment.js'

type ReachRules = Pick<RouteRules, 'origin' | 'base' | 'nozzleRadius' | 'proud' | 'units'>

/** Does the machine reach every bead, and stay out of its keep-outs? The worst place of each kind, with numbers. */
export function checkReach(bands: SectionBands, machine: Machine, rules: ReachRules): Finding[] {
  // Most bands lie well inside; only the others are looked at piece by piece.
  const outer = { ...bands, bands: bands.bands.filter(band => !isWellInside(band, machine, rules)) }
  const [overX, overY, overZ] = (['x', 'y', 'z'] as const).map(axis => worstOver(outer, machine, rules, axis))
  return [overX, overY, overZ, ...clashes(bands, machine, rules)].filter(finding => finding !== undefined)
}

function isWellInside(band: Band, { reach }: Machine, rules: ReachRules): boolean {
  const within = ([least, most]: readonly [number, number], value: number) => least <= value && value <= most
  return band.beads.every(bead => {
    const { least, most } = boxOf(bead.path)
    const corners = [least, most, [least[0], most[1]], [most[0], least[1]]] as const
    return (
      levelsOf(band, bead, rules).every(z => within(reach.z, z)) &&
      corners.every(corner => {
        const [x, y] = machinePoint(rules.origin, corner)
        return within(reach.x, x) && within(reach.y, y)
      })
    )
  })
}

const boxes = new WeakMap<Path, Bounds>()

/** A box that no piece leaves: round the points, with room for the highest arc over its chord. */
function boxOf(path: Path): Bounds {
  const known = boxes.get(path)
  if (known) return known
  const rise = segmentsOf(path).reduce(
    (most, { from, to, bulge }) => Math.max(most, (Math.abs(bulge) * distance(from, to)) / 2),
    0,
  )
  const { least, most } = pointBounds(path.points)
  const box: Bounds = { least: [least[0] - rise, least[1] - rise], most: [most[0] + rise, most[1] + rise] }
  boxes.set(path, box)
  return box
}

interface Extreme {
  readonly bead: Bead
  readonly point: Point
  readonly value: number
}

function worstOver(
  bands: SectionBands,
  machine: Machine,
  rules: ReachRules,
  axis: 'x' | 'y' | 'z',
): Finding | undefined {
  const [least, most] = machine.reach[axis]
  const all = bands.bands.flatMap(band => extremesOf(band, rules, axis))
  const excess = ({ value }: Extreme) => Math.max(least - value, value - most)
  const worst = all.reduce<Extreme | undefined>(
    (so, each) => (so && excess(so) >= excess(each) ? so : each),
    undefined,
  )
  if (!worst || excess(worst) <= 1e-9) return undefined
  const below = worst.value < least
  const said = (length: number) => formatQuantity(length, 'length', rules.units)
  return {
    check: 'reach',
    at: `${bands.section}/${worst.bead.id}`,
    point: worst.point,
    demand: worst.value,
    capacity: below ? least : most,
    unit: 'm',
    source: 'the job',
    verdict: 'fail',
    say: `Bead ${worst.bead.id} at ${formatPlace(worst.point, rules.units)} needs the machine at ${axis} = ${said(worst.value)}; it reaches ${said(least)} to ${said(most)}. Move the machine by ${said(excess(worst))} or divide the section.`,
  }
}

function extremesOf(band: Band, rules: ReachRules, axis: 'x' | 'y' | 'z'): Extreme[] {
  return band.beads.flatMap(bead => {
    if (axis !== 'z')
      return segmentsOf(bead.path).flatMap(segment =>
        farthestPoints(segment, rules).map(point => ({
          bead,
          point,
          value: machinePoint(rules.origin, point)[axis === 'x' ? 0 : 1],
        })),
      )
    const point = bead.path.points[0]!
    return levelsOf(band, bead, rules).map(value => ({ bead, point, value }))
  })
}

const levelsOf = (band: Band, bead: Bead, rules: ReachRules): readonly [number, number] => {
  const slab = rules.origin.z + rules.base
  return [slab + band.fromLayer * bead.height, slab + band.toLayer * bead.height]
}

/** Ends of a piece, and of an arc the points farthest along the machine's axes. */
function farthestPoints(segment: Segment, rules: ReachRules): Point[] {
  const ends = [segment.from, segment.to]
  if (segment.sweep === 0) return ends
  const quarter = Math.PI / 2
  const side = Math.sign(segment.sweep)
  // at the farthest points the machine-frame heading is a multiple of a quarter turn
  const first = (segment.heading + rules.origin.turn) / quarter
  const shares = [0, 1, 2, 3, 4].map(step => {
    const next = side > 0 ? Math.ceil(first) + step : Math.floor(first) - step
    return ((next - first) * quarter) / segment.sweep
  })
  return [...ends, ...shares.filter(share => share < 1).map(share => pointAt(segment, share))]
}

/** Beads beside what stands higher than they lie: keep-outs of the machine, and what the lead said stands proud. */
function clashes(bands: SectionBands, machine: Machine, rules: ReachRules): Finding[] {
  return obstaclesOf(machine, rules).flatMap(obstacle => {
    for (const band of bands.bands)
      for (const bead of band.beads) {
        const [low, high] = levelsOf(band, bead, rules)
        if (high < obstacle.bottom || low >= obstacle.top) continue
        const point = firstInside(bead, obstacle.outline, rules)
        if (point) return [clashFinding(bands.section, bead, point, obstacle, rules)]
      }
    return []
  })
}

function firstInside(bead: Bead, outline: readonly Point[], rules: ReachRules): Point | undefined {
  for (const segment of segmentsOf(bead.path))
    for (const [from, to] of straightParts(segment)) {
      const [a, b] = [machinePoint(rules.origin, from), machinePoint(rules.origin, to)]
      if (inside(a, outline) || comesNear(a, b, outline, rules.nozzleRadius)) return from
    }
  return undefined
}

/** An arc as chords of at most 5°; they leave it by less than a thousandth of its radius. */
function straightParts(segment: Segment): [Point, Point][] {
  const count = Math.max(1, Math.ceil(Math.abs(segment.sweep) / ((5 * Math.PI) / 180)))
  return Array.from({ length: count }, (_, i) => [
    pointAt(segment, i / count),
    pointAt(segment, (i + 1) / count),
  ])
}

/** The nozzle's own shape is not known, only its radius: beside what stands proud that is a warning. */
function clashFinding(
  section: string,
  bead: Bead,
  point: Point,
  { name, keepOut }: Obstacle,
  rules: ReachRules,
): Finding {
  const room = formatQuantity(rules.nozzleRadius, 'length', rules.units)
  const where = formatPlace(point, rules.units)
  return {
    check: keepOut ? 'keep-out' : 'nozzle-clash',
    at: `${section}/${bead.id}`,
    point,
    demand: 0,
    capacity: rules.nozzleRadius,
    unit: 'm',
    source: 'the job',
    verdict: keepOut ? 'fail' : 'warn',
    say: keepOut
      ? `Bead ${bead.id} at ${where} comes within ${room} of the keep-out "${name}". Move the machine or the keep-out.`
      : `Bead ${bead.id} at ${where} passes within ${room} of "${name}", which stands higher. Set it later, bend it away or check that the nozzle clears it.`,
  }
}
