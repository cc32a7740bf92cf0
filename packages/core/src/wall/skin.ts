import { type Point, pathNormal, pathPoint, plus, times } from '../geometry/index.js'
import type { Wall } from '../job/index.js'
import type { Metres } from '../quantity/index.js'
import type { SolidFill } from './bead-section.js'
import type { Body } from './body.js'
import { type Taken, wholeOf } from './recess.js'

/** What recesses leave of a solid wall over a run on which they stay the same. */
export interface Skin extends Taken {
  /** What leaves it. */
  readonly refs: readonly string[]
  /** Loops of the wall that find room for both their beads in it. */
  readonly loops: number
  /** Whether the wall goes on thicker before and after it. */
  readonly thickerBefore: boolean
  readonly thickerAfter: boolean
  /** Up to halfway into what is taken beside it; beyond the faces otherwise. */
  readonly reach: Pick<Taken, 'low' | 'high'>
}

type Across = Pick<Taken, 'low' | 'high'>

interface Leg {
  readonly from: Metres
  readonly to: Metres
  readonly left: readonly Across[]
  readonly refs: readonly string[]
}

/** What an opening or a recess takes, by its name. */
type Named = Taken & { readonly ref: string }

/** The skins behind all recesses of a body, stretch by stretch. `least`: the pitch of the narrowest bead. */
export function skinsOf(
  { cuts, stretches }: Pick<Body, 'cuts' | 'stretches'>,
  fill: SolidFill,
  least: Metres,
): readonly Skin[] {
  return stretches.flatMap(({ wall, from, to }) => {
    const own = cuts.map(({ ref, taken }) => ({ ref, ...taken })).filter(taken => taken.wall === wall)
    const isCut = own.some(taken => taken.low > -wall.thickness / 2 || taken.high < wall.thickness / 2)
    if (!isCut) return []
    const ends = [wholeOf(wall, from - BEYOND, from), wholeOf(wall, to, to + BEYOND)]
    return skinsIn(wall, [...own, ...ends.map(end => ({ ref: '', ...end }))], fill, least)
  })
}

function skinsIn(wall: Wall, taken: readonly Named[], fill: SolidFill, least: Metres): readonly Skin[] {
  const legs = legsOf(wall, taken)
  return legs.flatMap(({ from, to, left, refs }, i) => {
    const whole = left.length === 1 && size(left[0]!) > wall.thickness - 1e-6
    if (whole) return []
    return left.map(
      (across, k): Skin => ({
        wall,
        from,
        to,
        refs,
        ...across,
        loops: loopsIn(size(across), fill, least),
        thickerBefore: goesOnThicker(across, legs[i - 1], from),
        thickerAfter: goesOnThicker(across, legs[i + 1], to),
        reach: reachOf(left, k, wall.thickness / 2 + PROUD),
      }),
    )
  })
}

/** As many as fit; one less when they leave a gap that no bead is narrow enough for. */
function loopsIn(thickness: Metres, { pitch, width }: SolidFill, least: Metres): number {
  const filled = thickness - (width - pitch)
  const fitting = Math.max(0, Math.floor(filled / (2 * pitch) + 1e-6))
  const rest = filled - 2 * fitting * pitch
  return fitting > 0 && rest > FULL && rest < least ? fitting - 1 : fitting
}

/** Runs of the wall between the ends of openings, recesses and the stretch, with what these leave across it. */
function legsOf({ thickness }: Wall, taken: readonly Named[]): readonly Leg[] {
  const stations = [...new Set(taken.flatMap(({ from, to }) => [from, to]))].sort((a, b) => a - b)
  return stations.slice(1).flatMap((to, i) => {
    const from = stations[i]!
    if (to - from < 1e-6) return []
    const middle = (from + to) / 2
    const here = taken.filter(each => each.from < middle && middle < each.to)
    return [{ from, to, left: leftAcross(thickness, here), refs: here.map(({ ref }) => ref) }]
  })
}

function leftAcross(thickness: Metres, taken: readonly Across[]): readonly Across[] {
  const left: Across[] = []
  let low = -thickness / 2
  for (const each of [...taken].sort((a, b) => a.low - b.low)) {
    if (each.low > low + 1e-6) left.push({ low, high: each.low })
    low = Math.max(low, each.high)
  }
  if (low < thickness / 2 - 1e-6) left.push({ low, high: thickness / 2 })
  return left
}

function goesOnThicker(across: Across, next: Leg | undefined, at: Metres): boolean {
  if (!next || Math.min(Math.abs(next.from - at), Math.abs(next.to - at)) > 1e-6) return true
  const beside = next.left.filter(({ low, high }) => low < across.high && high > across.low)
  return beside.some(other => size(other) > size(across) + 1e-6)
}

function reachOf(left: readonly Across[], k: number, out: Metres): Across {
  const [before, own, after] = [left[k - 1], left[k]!, left[k + 1]]
  return {
    low: before ? (before.high + own.low) / 2 : -out,
    high: after ? (own.high + after.low) / 2 : out,
  }
}

export const size = ({ low, high }: Across): Metres => high - low

export function skinMiddle({ wall: { centreline }, from, to, low, high }: Skin): Point {
  const station = (from + to) / 2
  const away = times(pathNormal(centreline, station), (low + high) / 2)
  return plus(pathPoint(centreline, station), away)
}

/** Past the ends of a stretch nothing is left of it [m]. */
const BEYOND: Metres = 1

/** Less than this is no gap [m]. */
export const FULL: Metres = 1e-3

/** Rings that cut a skin off stand so far beyond it, so that no hair is left along its edges. */
const PROUD: Metres = 1e-6
