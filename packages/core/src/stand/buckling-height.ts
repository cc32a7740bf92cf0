import type { Metres, MetresPerSecond } from '../quantity/index.js'
import { assert } from '../result/index.js'
import { type Curing, curedModulus } from './curing.js'
import { leafLaw } from './make-up.js'
import { bucklingLoadsBelow, gaussHeights, type Strip } from './strip.js'
import { clampedShape, freeShape, type StripShape, simplySupportedShape } from './strip-element.js'

/** A straight leaf that rises steadily on a clamping foot. */
export interface RisingWall {
  readonly thickness: Metres
  /** [kg/m³] */
  readonly density: number
  /** [m/s²] */
  readonly gravity: number
  /** Poisson’s ratio [1]. */
  readonly poisson: number
  readonly curing: Curing
  readonly rise: MetresPerSecond
  /** Sideways at both ends; `free` leans as a whole, as a plate of unlimited length. */
  readonly support:
    | { readonly kind: 'free' }
    | { readonly kind: 'simple' | 'clamped'; readonly length: Metres }
}

/** `none` up to the height looked at is an answer: a narrow wall that cures fast enough never buckles. */
export type BucklingHeight =
  | { readonly kind: 'buckles'; readonly height: Metres }
  | { readonly kind: 'none'; readonly upTo: Metres }

/**
 * Height at which a rising wall buckles under its own weight, its stiffness growing with age all the while.
 *
 *   w = X(x)·f(y);  ½∫D(s)[X″² + a₂X² − 2νa₁XX″ + 2(1 − ν)a₁X′²]dx = ½∫ρgh·s·X′²dx,  D = E(s/rise)·h³/12(1 − ν²)
 *
 * @param wall  thickness h, density, curing, rise, support
 * @param upTo  height to look to [m]
 *
 * Source   [Suiker2018] energy of walls on simple and clamped supports, read second-hand; solved here with Hermite elements,
 *          first root by marching in steps of 3 % and bisection.
 * Range    h small against height and length. `clamped` is a one-term shape, 4.5 % high on narrow walls.
 * Assumes  foot clamped by what is hard; straight and plumb: multiply by the imperfection factor.
 */
export function bucklingHeight(wall: RisingWall, upTo: Metres): BucklingHeight {
  assert(upTo > 0, 'a march has a height to look to')
  const stands = (height: Metres) => bucklingLoadsBelow(risingStrip(wall, height), 1) === 0
  let height = Math.min(upTo, lengthUnit(wall)) / 2
  while (!stands(height)) height /= 2
  while (height < upTo) {
    const next = Math.min(upTo, height * 1.03)
    if (!stands(next)) return { kind: 'buckles', height: between(height, next, stands) }
    height = next
  }
  return { kind: 'none', upTo }
}

/**
 * The length all heights of the literature are measured in, in m: L₀ = (D₀/ρgh)^⅓, D₀ = E₀·h³/12(1 − ν²).
 *
 * Source   [Suiker2018], closed form.
 * Range    any leaf.
 * Assumes  the stiffness of material just laid.
 */
export function lengthUnit({ thickness, density, gravity, poisson, curing }: RisingWall): Metres {
  const rigidity = (curedModulus(curing, 0) * thickness ** 3) / (12 * (1 - poisson ** 2))
  return Math.cbrt(rigidity / (density * gravity * thickness))
}

function between(low: Metres, high: Metres, stands: (height: Metres) => boolean): Metres {
  let [good, bad] = [low, high]
  while (bad - good > 1e-9 * bad) {
    const middle = (good + bad) / 2
    if (stands(middle)) good = middle
    else bad = middle
  }
  return good
}

function risingStrip(wall: RisingWall, height: Metres): Strip {
  const { thickness, density, gravity, poisson, curing, rise, support } = wall
  const shape = shapeOf(support)
  const waves = Math.max(height * Math.sqrt(shape.slope), height / lengthUnit(wall))
  const elements = Math.max(16, Math.min(600, Math.ceil(6 * waves)))
  const rigid = thickness ** 3 / 12 / (1 - poisson ** 2)
  return {
    height,
    weight: density * gravity * thickness,
    law: { ...leafLaw(thickness, poisson, shape), own: rigid },
    modulus: gaussHeights(elements).map(share => curedModulus(curing, (height * (1 - share)) / rise)),
    elements,
  }
}

function shapeOf(support: RisingWall['support']): StripShape {
  switch (support.kind) {
    case 'free':
      return freeShape
    case 'simple':
      return simplySupportedShape(support.length)
    case 'clamped':
      return clampedShape(support.length)
  }
}
