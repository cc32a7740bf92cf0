import { newRouteCache, type RouteCache } from '../route/index.js'
import type { Division } from '../section/index.js'
import type { PaceTable } from '../stand/index.js'
import type { BandCache, KnownSteps, SectionBands } from '../wall/index.js'
import type { KeptDays } from './kept-days.js'
import { type GainCache, newGainCache } from './kept-gains.js'
import type { KnownGeometry } from './kept-geometry.js'
import { type KnownWeather, newKnownWeather } from './kept-hours.js'
import { type KnownRuns, newKnownRuns } from './kept-runs.js'
import type { LiftCure } from './plan.js'
import { newTextNumbers, type TextNumbers } from './text-numbers.js'

/**
 * What earlier plans worked out, by what it depends on: an edit computes again only what it touches. Each map keeps its
 * oldest entries first; `trimPlanCache` drops those that the last few plans did not ask for.
 */
export interface PlanCache {
  readonly bands: BandCache
  readonly routes: RouteCache
  readonly divisions: Map<string, Division>
  /** What stands at which pace, by mix and rules. */
  readonly paces: Map<string, PaceTable>
  /** What the hours of weather mean. */
  readonly weather: KnownWeather
  /** Sections as they are printed at any speed, by their routes. */
  readonly runs: KnownRuns
  readonly geometry: KnownGeometry
  /** What would buy layers of lifts. */
  readonly gains: GainCache
  readonly cures: Map<string, LiftCure>
  /** What the keys of cures are made of. */
  readonly numbers: TextNumbers
  /** Campaigns by job, weather and log. */
  readonly days: Map<string, KeptDays>
  /** What hangs over, step by step. */
  readonly overhangs: KnownSteps
}

export const newPlanCache = (): PlanCache => ({
  bands: new Map(),
  routes: newRouteCache(),
  divisions: new Map(),
  paces: new Map(),
  weather: newKnownWeather(),
  runs: newKnownRuns(),
  geometry: new WeakMap(),
  gains: newGainCache(),
  cures: new Map(),
  numbers: newTextNumbers(),
  days: new Map(),
  overhangs: new WeakMap(),
})

/** A value from the cache, now its youngest entry; made if it is not there. */
export function kept<T>(cache: Map<string, T>, key: string, make: () => T): T {
  const value = cache.get(key) ?? make()
  cache.delete(key)
  cache.set(key, value)
  return value
}

/** As many plans of this size are kept: undo and redo of a handful of edits find theirs. */
const plansKept = 6

/** Forgets what the last few plans did not use: a server and a browser's worker run for weeks. */
export function trimPlanCache(cache: PlanCache, bands: readonly SectionBands[], lifts: number): void {
  const used = bands.reduce((sum, each) => sum + each.bands.length, 0)
  trim(cache.bands, plansKept * used)
  const beads = bands.reduce(
    (sum, each) => sum + each.bands.reduce((own, band) => own + band.beads.length, 0),
    0,
  )
  trim(cache.routes.bands, plansKept * used)
  trim(cache.routes.sections, plansKept * bands.length)
  trim(cache.routes.paths.byContent, plansKept * beads)
  trim(cache.divisions, plansKept)
  trim(cache.cures, plansKept * lifts)
  trim(cache.paces, 2)
  // Undo finds the days of the plan before; more would keep whole plans alive.
  trim(cache.days, 2)
  // A table grows with every make-up and pace that is tried.
  for (const [key, table] of cache.paces) if (table.size() > mostPaces) cache.paces.delete(key)
}

const mostPaces = 20_000

function trim<K>(cache: Map<K, unknown>, most: number): void {
  let spare = cache.size - Math.max(1, most)
  for (const key of cache.keys()) {
    if (spare-- <= 0) return
    cache.delete(key)
  }
}
