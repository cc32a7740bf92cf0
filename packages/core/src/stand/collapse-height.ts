import type { Metres, MetresPerSecond, Pascals } from '../quantity/index.js'

/** A collapse height, or none: strength grows as fast as the weight, or faster. */
export type CollapseHeight =
  | { readonly kind: 'collapses'; readonly height: Metres }
  | { readonly kind: 'none' }

/**
 * Height at which the foot of a rising wall yields, strength growing in a straight line: H = σ₀/(ρg − A/rise).
 *
 * @param start    uniaxial strength of fresh material σ₀ [Pa]
 * @param growth   A [Pa/s]
 * @param rise     [m/s]
 * @param weight   ρg [N/m³]
 *
 * Source   [Suiker2018] section on plastic collapse; with σ = α·τ₀ it is the criterion of [Perrot2016]; exact by hand.
 * Range    `none` when A/rise ≥ ρg.
 * Assumes  slender wall, no confinement.
 */
export function linearCollapseHeight(
  start: Pascals,
  growth: number,
  rise: MetresPerSecond,
  weight: number,
): CollapseHeight {
  const left = weight - growth / rise
  return left > 0 ? { kind: 'collapses', height: start / left } : { kind: 'none' }
}

/**
 * Rise below which a wall of linearly growing yield stress never collapses, in m/s: Rc = α·A/(ρg).
 *
 * @param rate    A_thix [Pa/s]
 * @param shape   α [1]: √3 for a slender wall
 * @param weight  ρg [N/m³]
 *
 * Source   [Perrot2016], from memory; exact by hand.
 * Range    linear growth.
 * Assumes  strength only: buckling is another matter.
 */
export const criticalRise = (rate: number, shape: number, weight: number): MetresPerSecond =>
  (shape * rate) / weight

/**
 * Height at which the foot yields when strength approaches an end value: H̄ = r + (1 − r)·exp(−ξ̄·H̄), lengths in σ₀/ρg.
 *
 * @param end   r = σ∞/σ₀ [1]
 * @param rate  ξ̄ = ξ·σ₀/(ρg·rise) [1]
 *
 * Source   [Suiker2018], from memory; the equation is exact.
 * Range    r > 0, ξ̄ ≥ 0: one positive root, at or under r for r > 1.
 * Assumes  slender wall.
 */
export function exponentialCollapseHeight(end: number, rate: number): number {
  const gap = (height: number) => end + (1 - end) * Math.exp(-rate * height) - height
  let [low, high] = [0, Math.max(1, end) + 1]
  for (let i = 0; i < 100; i++) {
    const middle = (low + high) / 2
    if (gap(middle) > 0) low = middle
    else high = middle
  }
  return (low + high) / 2
}

/**
 * Layers at which the foot yields with a strength in two straight parts (re-flocculation, then structuration), by the
 * lower bound σ ≤ α·τ:  n = ⌊ α(τs − A·trf)/(ρgh − α·A·T) ⌋ once the foot is past its knee.
 *
 * @param knee   τs at trf [Pa], trf [s]
 * @param rate   A after the knee [Pa/s]
 * @param shape  α = 2·F_AR [1], F_AR ≥ 1 for squat layers
 * @param layer  weight of one layer ρgh [Pa], time per layer T [s]
 *
 * Source   [Kruger2019], algebra derived anew.
 * Range    n·T ≥ trf, else none; none too when strength outgrows the weight.
 * Assumes  Tresca, slender unless F_AR says otherwise.
 */
export function bilinearCollapseLayers(
  knee: { readonly stress: Pascals; readonly age: number },
  rate: number,
  shape: number,
  layer: { readonly stress: Pascals; readonly time: number },
): number | undefined {
  const left = layer.stress - shape * rate * layer.time
  if (left <= 0) return undefined
  const layers = Math.floor((shape * (knee.stress - rate * knee.age)) / left)
  return layers * layer.time >= knee.age ? layers : undefined
}

/**
 * Yield stress a bead just laid needs to keep its shape, in Pa: τ = ρgh/√3.
 *
 * @param weight  ρg [N/m³]
 * @param height  layer height h [m]
 *
 * Source   [Roussel2018], from memory; von Mises by hand.
 * Range    beads wider than high.
 * Assumes  no pressure from the nozzle.
 */
export const firstLayerYield = (weight: number, height: Metres): Pascals => (weight * height) / Math.sqrt(3)
