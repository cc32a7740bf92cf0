import type { Metres } from '../quantity/index.js'
import type { StandMake } from './stand-geometry.js'
import type { StripLaw, StripShape } from './strip-element.js'

type Double = Extract<StandMake, { kind: 'double' }>

/** Middle to middle of the wythes. */
export const wytheSpacing = (make: Double): Metres => make.thickness - make.bead

/** Every web goes over and back once in a pitch. */
const LEGS_PER_PITCH = 2

/** Free width of a wythe between the ties that hold it: a crosstie holds both wythes at each crossing. */
export const tieSpacing = (make: Double): Metres => (make.web === 'crosstie' ? make.pitch / 2 : make.pitch)

/** Run of one leg along the wall while it crosses from wythe to wythe. */
const legRun = (make: Double): Metres => (make.web === 'crosstie' ? 0 : make.pitch / 2)

/** Solid material per metre of wall [m²/m]. */
export function materialWidth(make: StandMake): Metres {
  if (make.kind === 'leaf') return make.thickness
  const clear = Math.max(0, wytheSpacing(make) - make.bead)
  const leg = (clear * Math.hypot(wytheSpacing(make), legRun(make))) / wytheSpacing(make)
  return 2 * make.bead + (LEGS_PER_PITCH * leg * make.bead) / make.pitch
}

/**
 * Shear stiffness of the web between the wythes when the wall bends up its height, over Young's modulus, per metre of wall [m].
 * Each leg is a wall of one bead, standing across the cavity at an angle θ to the wall's normal:
 *
 *   S = G·t·(legs/pitch)·d·cos θ,   G = E/(2(1 + ν))
 *
 * @param make     double wall: bead t, spacing d of the wythes, pitch and web
 * @param poisson  ν
 *
 * Source   closed form: strain energy of inclined plates in shear, γ along the plate = γ·cos θ.
 * Range    any pitch; a wave counts as its straight legs.
 * Assumes  the web is laid in every layer and sticks to both wythes.
 */
export function shearStiffnessUp(make: Double, poisson: number): number {
  const d = wytheSpacing(make)
  const cosine = d / Math.hypot(d, legRun(make))
  return (make.bead * LEGS_PER_PITCH * d * cosine) / make.pitch / (2 * (1 + poisson))
}

/**
 * Shear stiffness of the web between the wythes when the wall bends along its length, over Young's modulus [m].
 *
 *   zigzag    S = 2·t·d·sin²θ·cos θ/pitch                     (a lattice girder)
 *   others    S = 1/( a·d/(12·I) + a²/(24·I) ),  I = t³/12, a = pitch/2   (a ladder of stiff joints)
 *
 * Source   [TimoshenkoGere1961] section 2.18, built-up columns, from memory.
 * Range    screening; the whole-section model carries the true web.
 * Assumes  a wave ties no better than a ladder.
 */
export function shearStiffnessAlong(make: Double): number {
  const d = wytheSpacing(make)
  if (make.web === 'zigzag') {
    const leg = Math.hypot(d, legRun(make))
    const [sine, cosine] = [legRun(make) / leg, d / leg]
    return (2 * make.bead * d * sine ** 2 * cosine) / make.pitch
  }
  const [inertia, apart] = [make.bead ** 3 / 12, make.pitch / LEGS_PER_PITCH]
  return 1 / ((apart * d) / (12 * inertia) + apart ** 2 / (24 * inertia))
}

/**
 * Share of a wythe that works between webs `2·half` apart when the wall bends in half-waves of length `wave` (shear lag),
 * against the whole wythe as a plate:
 *
 *   share = 4(1 − ν)·sinh²u / ( u·[ (3 − ν)·sinh 2u − 2(1 + ν)u ] ),   u = π·half/wave
 *
 * @param poisson  ν [1]
 *
 * Source   closed form: Airy function of a flange in plane stress, held straight at the webs; for u → ∞ it is the
 *          effective width 2/((3 + 2ν − ν²)k) of [TimoshenkoGoodier1970] section 53, from memory.
 * Range    0 < share ≤ 1.
 * Assumes  a sine of moment along the height; a wall on its foot bends in about a quarter wave, so wave = 2·height.
 */
export function shearLagShare(half: Metres, wave: Metres, poisson: number): number {
  const u = (Math.PI * half) / wave
  if (u < 1e-4) return 1
  if (u > 40) return (2 * (1 - poisson)) / (u * (3 - poisson))
  return (
    (4 * (1 - poisson) * Math.sinh(u) ** 2) / (u * ((3 - poisson) * Math.sinh(2 * u) - 2 * (1 + poisson) * u))
  )
}

/** Law of one leaf: a plate, or a plain cantilever where a free edge lets it bend both ways. */
export const leafLaw = (thickness: Metres, poisson: number, shape: StripShape): StripLaw => ({
  poisson,
  shape,
  own: thickness ** 3 / 12 / (shape.bend === 0 ? 1 : 1 - poisson ** 2),
  composite: 0,
  shearUp: 0,
  shearAlong: 0,
})

/**
 * What is left of a leaf's bending stiffness once it also gives way in shear: 1/(1 + k²·h²/(5(1 − ν))).
 *
 * @param thickness  h [m]
 * @param height     over the foot [m]: a wall on its foot bends as in k = 1.42·π/(2·height)
 * @param shape      along the wall; its slope is the square of a second wave number
 * @param poisson    ν
 *
 * Source   closed form: D/(⅚·G·h) of a Mindlin plate in a sine wave. 1.42 is fitted under our own shells of two, four and
 *          seven layers; a slender cantilever has 1.2, and 1.78 is Dunkerley's bound, which no wall falls below.
 * Range    k·h up to about 3: lifts of a few layers, lower than a bead is wide.
 * Assumes  one wave rules; whole-section shells carry shear as it is.
 */
export function shearSoftening(
  thickness: Metres,
  height: Metres,
  shape: StripShape,
  poisson: number,
): number {
  const lean = (1.42 * Math.PI) / (2 * height)
  const wave = Math.max(lean ** 2, shape.bend > 0 ? shape.slope : 0) + shape.slope
  return 1 / (1 + (wave * thickness ** 2) / (5 * (1 - poisson)))
}

/** A leaf of this height with its shear counted. */
export function softLeafLaw(thickness: Metres, height: Metres, poisson: number, shape: StripShape): StripLaw {
  const law = leafLaw(thickness, poisson, shape)
  return { ...law, own: law.own * shearSoftening(thickness, height, shape, poisson) }
}

/** Law of a whole wall of this make-up at this height over its foot. */
export function wallLaw(make: StandMake, height: Metres, poisson: number, shape: StripShape): StripLaw {
  if (make.kind === 'leaf') return softLeafLaw(make.thickness, height, poisson, shape)
  const plate = leafLaw(make.bead, poisson, shape)
  const share = shearLagShare(tieSpacing(make) / 2, 2 * height, poisson)
  const perBead = (12 * plate.own) / make.bead ** 3
  return {
    ...plate,
    own: 2 * plate.own,
    composite: (share * perBead * make.bead * wytheSpacing(make) ** 2) / 2,
    shearUp: shearStiffnessUp(make, poisson),
    shearAlong: shearStiffnessAlong(make),
  }
}
