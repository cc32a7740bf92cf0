import type { Metres } from '../quantity/index.js'

/**
 * Second moment of a curved leaf's plan about its own weak axis, over that of the same leaf laid straight: 1 + (16/15)(s/h)²,
 * s = b²/(8R) its rise. As a whole the leaf can only lean by bending about that axis.
 *
 * @param thickness  h [m]
 * @param radius     of the middle line R [m]
 * @param length     along the middle line b [m]
 *
 * Source   closed form: I of a parabola of thickness h, b·h³/12 + b·h·s²·(4/45).
 * Range    rise small against length: up to about a third of a circle.
 * Assumes  the plan keeps its shape.
 */
export const curvedInertiaGain = (thickness: Metres, radius: Metres, length: Metres): number =>
  1 + (16 / 15) * (length ** 2 / (8 * radius * thickness)) ** 2

/**
 * How many times more of its own weight an open curved leaf bears than the same leaf laid straight.
 *
 *   gain = max(1, min( curved inertia, 0.9·H/√(R·h) ))
 *
 * The second term is the free edge: it buckles by itself, without stretching the leaf, at λ ∝ E·h^1.5/(ρg·H²·√R).
 *
 * @param leaf    thickness h, radius R, length b along the middle line [m]
 * @param height  over the foot H [m]
 *
 * Source   derived: the exponents and the 0.9 are fitted under our own whole-section shells (14 arcs of 45–270°, R 0.5–4 m,
 *          h 50 and 200 mm, H 0.6 and 1 m; the shells bear 1.05 to 1.4 times as much); one arc checked with CalculiX 2.20.
 * Range    those arcs. Not published: a screening value, the whole-section model decides.
 * Assumes  no return at either end; a return only helps.
 */
export function curvatureGain(
  leaf: { readonly thickness: Metres; readonly radius: Metres; readonly length: Metres },
  height: Metres,
): number {
  const inertia = curvedInertiaGain(leaf.thickness, leaf.radius, leaf.length)
  return Math.max(1, Math.min(inertia, (0.9 * height) / Math.sqrt(leaf.radius * leaf.thickness)))
}
