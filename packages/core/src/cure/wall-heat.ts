import type { Instant, Seconds } from '../quantity/index.js'
import { assert } from '../result/index.js'
import type { CoverKind } from './cover.js'
import type { CoverSpan, WallHeatInput } from './wall-case.js'
import { cellDepths } from './wall-cells.js'
import { freshWall, recordWall, wear } from './wall-state.js'
import { stepWall } from './wall-step.js'
import type { WallHeat } from './wall-trace.js'
import type { WallWeather } from './wall-weather.js'

/** The trace keeps a moment every half hour. */
const RECORD: Seconds = 1800
/** How long wetting and heat are told by the clock: the night and the next day. */
export const FINE: Seconds = 36 * 3600

/**
 * Temperature, maturity and drying of a wall from its printing on, hour by hour.
 *
 * Transient heat through wythe, cavity, wythe (theta method, half implicit but for the steps after a change of cover, which are
 * wholly implicit), with heat of hydration, sun on both faces, wind, long-wave and evaporation under covers that change. Boundary
 * laws are linearised until heat in, out and stored agree; `balanceError` says how well.
 *
 * Source   conduction [Patankar1980], faces [Incropera2007], hydration [SchindlerFolliard2005]; all from memory or second-hand.
 * Range    walls of 30 to 500 mm, steps of 1 to 15 minutes.
 * Scatter  2 to 4 K on site, mostly by film coefficient and shade.
 * Assumes  one stretch far from corners and openings; ties, slab and drying of the core left out; weather as told.
 */
export function wallHeat(input: WallHeatInput): WallHeat {
  const { start, weather, enough, duration = 7 * 86400 } = input
  assert(
    (input.step ?? 1) > 0 && Number.isFinite(input.mixTemperature),
    'wall heat starts from a step and a temperature',
  )
  assert(weather.count >= 2, 'wall heat needs two hours of weather or more')
  const until = Math.max(start, Math.min(start + duration, lastMoment(weather)))
  const state = freshWall(input)
  recordWall(state, start)
  let calm = 0
  let [from, end] = [start, until]
  while (true) {
    const step = input.step ?? (from < start + FINE ? 300 : 900)
    if (from + step > until + 1e-6) break
    const cover = coverAt(input.covers, from + step / 2)
    if (cover !== state.worn) calm = 0
    wear(state, cover)
    // Two wholly implicit steps damp the jump that a half implicit one would let ring.
    stepWall(state, input, from, step, calm < 2 ? 1 : 0.5)
    calm += 1
    from += step
    if ((from - start) % RECORD >= step) continue
    recordWall(state, from)
    if (enough && from >= start + enough.after && state.trace.age.at(-1)! >= enough.age) {
      end = from
      break
    }
  }
  const { trace, profile, rewettings, balanceError } = state
  const depths = cellDepths(input.build, state.temperatures.length)
  return { start, until: end, trace, profile, depths, rewettings, balanceError }
}

function coverAt(spans: readonly CoverSpan[], at: Instant): CoverKind {
  let cover: CoverKind = 'bare'
  for (const span of spans) if (span.from <= at) cover = span.cover
  return cover
}

/** Weather is known to the middle of its last hour. */
const lastMoment = ({ first, count }: WallWeather): Instant => first + count * 3600 - 1800
