import type { Point } from '../geometry/index.js'
import type { Units } from '../limit/index.js'
import type { MachineOrigin } from '../machine/index.js'
import type { Metres, MetresPerSecond, Share } from '../quantity/index.js'
import { PathPool } from './path-pool.js'
import type { RoutedBand } from './route-band.js'
import type { RoutedSection } from './route-section.js'

/** Something standing above the layer being printed: a bar, a box, a lintel, a silo. Building frame. */
export interface Proud {
  readonly name: string
  readonly outline: readonly Point[]
  /** Height above the slab [m]. */
  readonly top: Metres
}

/** Where closed loops begin: moved from layer to layer, or near one place the lead has chosen to hide the seam. */
export type StartPlace = { readonly kind: 'staggered' } | { readonly kind: 'hidden'; readonly near: Point }

/**
 * What earlier calls worked out: routes of bands by everything they depend on, with the names their beads had; whole
 * sections; and the paths they share. Each map keeps its oldest entries first: the owner drops them when it grows large.
 */
export interface RouteCache {
  readonly paths: PathPool
  readonly bands: Map<string, RoutedBand & { readonly beads: readonly string[] }>
  readonly sections: Map<string, RoutedSection>
}

export const newRouteCache = (): RouteCache => ({
  paths: new PathPool(),
  bands: new Map(),
  sections: new Map(),
})

/** What routing needs besides beads and machine. */
export interface RouteOptions {
  /** Nozzle speed asked for; the machine may allow less. */
  readonly speed: MetresPerSecond
  readonly origin?: MachineOrigin
  /** Height of the slab under layer 1 of this section, above the building's zero. */
  readonly base?: Metres
  readonly start?: StartPlace
  readonly proud?: readonly Proud[]
  /** Two bead ends up to this share of the bead width apart are joined without a stop. */
  readonly joinGap?: Share
  /** Room the nozzle needs beside its centre when it passes what stands proud. */
  readonly nozzleRadius?: Metres
  /** Of the words of findings; metric unless said. */
  readonly units?: Units
  /** Routes of bands already seen, by what they depend on; filled as it is used. */
  readonly cache?: RouteCache
}

/** The options with nothing left open. Defaults: common practice, no source. */
export type RouteRules = Required<Omit<RouteOptions, 'cache'>>

export const routeRules = (options: RouteOptions): RouteRules => ({
  speed: options.speed,
  origin: options.origin ?? { x: 0, y: 0, z: 0, turn: 0 },
  base: options.base ?? 0,
  start: options.start ?? { kind: 'staggered' },
  proud: options.proud ?? [],
  joinGap: options.joinGap ?? 1,
  nozzleRadius: options.nozzleRadius ?? 0.1,
  units: options.units ?? 'metric',
})
