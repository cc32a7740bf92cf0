import type { Block } from './check-line.js'

/** An arc in its own plane: first axis, second axis, and the one across. File units until scaled by the caller. */
export interface Arc {
  readonly centre: readonly [number, number]
  readonly radius: number
  /** Positive counter-clockwise seen from the positive end of the axis across. */
  readonly sweep: number
  readonly startAngle: number
}

/** What an arc is read from; lengths in metres. */
export interface ArcTask {
  readonly from: readonly [number, number]
  readonly to: readonly [number, number]
  readonly clockwise: boolean
  /** Offsets of the centre from the start, by the plane's letters; `undefined` when not given. */
  readonly offsets: readonly [number | undefined, number | undefined]
  readonly radius: number | undefined
}

/** What a file counts lengths in, and one of it [m]. */
type FileUnit = 'mm' | 'in'
const metres = { mm: 0.001, in: 0.0254 } as const

/** NISTIR 6556, 3.5.3: both ends as far from the centre, to 0.002 mm or 0.0002 in [m]. */
const arcTolerance = { mm: 2e-6, in: 0.0002 * 0.0254 }

/** Shorter than anything a file can write [m]. */
const nothing = 1e-9

/** The arc, or what is wrong with it, in the units of its file. */
export function arcOf(task: ArcTask, unit: FileUnit): Arc | string {
  const [i, j] = task.offsets
  if (task.radius !== undefined) {
    if (i !== undefined || j !== undefined)
      return 'An arc has a radius R and a centre I J K at once. Keep one.'
    return arcOfRadius(task, task.radius, unit)
  }
  if (i === undefined && j === undefined)
    return 'An arc has neither a centre (I J K of its plane) nor a radius R.'
  return arcOfCentre(task, [task.from[0] + (i ?? 0), task.from[1] + (j ?? 0)], unit)
}

function arcOfCentre({ from, to, clockwise }: ArcTask, centre: readonly [number, number], unit: FileUnit) {
  const radius = Math.hypot(from[0] - centre[0], from[1] - centre[1])
  const endRadius = Math.hypot(to[0] - centre[0], to[1] - centre[1])
  if (radius < nothing) return 'The centre of the arc is its start. Give another centre.'
  if (Math.abs(radius - endRadius) > arcTolerance[unit] + nothing)
    return `The arc starts ${said(radius, unit)} from its centre and ends ${said(endRadius, unit)} from it; they may differ by ${said(arcTolerance[unit], unit)}. Write more decimals or correct the centre.`
  const startAngle = Math.atan2(from[1] - centre[1], from[0] - centre[0])
  const endAngle = Math.atan2(to[1] - centre[1], to[0] - centre[0])
  const full = Math.hypot(to[0] - from[0], to[1] - from[1]) < nothing
  return { centre, radius, sweep: turned(startAngle, endAngle, clockwise, full), startAngle }
}

/** R > 0 turns at most half a circle, R < 0 at least (3.5.3.1). */
function arcOfRadius({ from, to, clockwise }: ArcTask, given: number, unit: FileUnit): Arc | string {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const chord = Math.hypot(dx, dy)
  const radius = Math.abs(given)
  if (chord < nothing) return 'An arc given by its radius ends where it starts. Give its centre instead.'
  if (chord / 2 > radius + 1e-6)
    return `The ends of the arc are ${said(chord, unit)} apart; a radius of ${said(radius, unit)} cannot join them.`
  const height = Math.sqrt(Math.max(0, radius ** 2 - (chord / 2) ** 2))
  const side = clockwise === given > 0 ? -1 : 1
  const centre = [
    (from[0] + to[0]) / 2 - (side * height * dy) / chord,
    (from[1] + to[1]) / 2 + (side * height * dx) / chord,
  ] as const
  const startAngle = Math.atan2(from[1] - centre[1], from[0] - centre[0])
  const endAngle = Math.atan2(to[1] - centre[1], to[0] - centre[0])
  return { centre, radius, sweep: turned(startAngle, endAngle, clockwise, false), startAngle }
}

function turned(start: number, end: number, clockwise: boolean, full: boolean): number {
  const whole = 2 * Math.PI
  if (full) return clockwise ? -whole : whole
  const left = (((end - start) % whole) + whole) % whole
  return clockwise ? left - whole : left
}

/** Smallest and greatest of both plane coordinates along an arc. */
export function arcBox({
  centre,
  radius,
  sweep,
  startAngle,
}: Arc): readonly [number, number, number, number] {
  const quarter = Math.PI / 2
  const [low, high] = sweep > 0 ? [startAngle, startAngle + sweep] : [startAngle + sweep, startAngle]
  const angles = [low, high]
  for (let k = Math.ceil(low / quarter); k * quarter < high; k++) angles.push(k * quarter)
  const xs = angles.map(angle => centre[0] + radius * Math.cos(angle))
  const ys = angles.map(angle => centre[1] + radius * Math.sin(angle))
  return [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
}

/** Plane letters: which axes an arc lies in, and the words of its centre. */
export const planes = {
  17: { axes: ['X', 'Y'], across: 'Z', offsets: ['I', 'J'] },
  18: { axes: ['Z', 'X'], across: 'Y', offsets: ['K', 'I'] },
  19: { axes: ['Y', 'Z'], across: 'X', offsets: ['J', 'K'] },
} as const

export const arcWords = (values: Block['values']): boolean =>
  ['I', 'J', 'K', 'R'].some(letter => values[letter] !== undefined)

const said = (length: number, unit: FileUnit): string => `${(length / metres[unit]).toFixed(4)} ${unit}`
