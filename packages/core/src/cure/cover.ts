import type { Share } from '../quantity/index.js'

export type CoverKind =
  | 'bare'
  | 'wet-burlap'
  | 'clear-plastic'
  | 'white-sheet'
  | 'curing-compound'
  | 'insulated-blanket'

/** How a face trades heat and water under a cover. */
export interface Cover {
  /** Share of the sun that reaches the wall through the cover, and that the cover itself keeps. */
  readonly transmission: Share
  readonly kept: Share
  /** Share of what reaches it that the wall (or wet cloth on it) keeps. */
  readonly absorptance: Share
  readonly emissivity: Share
  /** Air gap and blanket between wall and cover [m²K/W]. */
  readonly resistance: number
  /** `wet`: as free water while there is any; `drying`: less and less as the surface dries; `none`. */
  readonly evaporation: 'wet' | 'drying' | 'none'
  /** Water the cover holds when soaked [kg/m²]; 0: none. */
  readonly store: number
  readonly source: string
}

/**
 * Gap behind a loose sheet over a damp wall [m²K/W]: 2.5 W/m²K by air, 5 by radiation, and about 12 by vapour that leaves the wall and
 * condenses on the sheet (Lewis: 2.5·L/cp·dW/dT, five times the air's share at 40 °C). Derived, known to a third; with what is not
 * known of the sheet and the wall's colour its temperature is good to ±10 K. A wall that has dried has 7.5 and gets 20 K and more hotter.
 */
const GAP = 1 / 20

/** Concrete's sun and heat properties by [Incropera2007] tables, from memory; covers by common practice. */
export const covers: Readonly<Record<CoverKind, Cover>> = {
  bare: {
    transmission: 1,
    kept: 0,
    absorptance: 0.6,
    emissivity: 0.88,
    resistance: 0,
    evaporation: 'drying',
    store: 0,
    source: 'Incropera2007',
  },
  'wet-burlap': {
    transmission: 1,
    kept: 0,
    absorptance: 0.7,
    emissivity: 0.9,
    resistance: 0,
    evaporation: 'wet',
    store: 0.9,
    source: 'common practice, no source',
  },
  'clear-plastic': {
    transmission: 0.85,
    kept: 0.05,
    absorptance: 0.6,
    emissivity: 0.88,
    resistance: GAP,
    evaporation: 'none',
    store: 0,
    source: 'common practice, no source',
  },
  'white-sheet': {
    transmission: 0.1,
    kept: 0.15,
    absorptance: 0.6,
    emissivity: 0.88,
    resistance: GAP,
    evaporation: 'none',
    store: 0,
    source: 'common practice, no source',
  },
  'curing-compound': {
    transmission: 1,
    kept: 0,
    absorptance: 0.4,
    emissivity: 0.88,
    resistance: 0,
    evaporation: 'none',
    store: 0,
    source: 'common practice, no source',
  },
  'insulated-blanket': {
    transmission: 0,
    kept: 0.7,
    absorptance: 0.6,
    emissivity: 0.9,
    resistance: 0.6,
    evaporation: 'none',
    store: 0,
    source: 'common practice, no source',
  },
}
