import type { Point } from './path.js'
import { difference, inset, unionRings } from './region.js'
import type { Ring } from './ring.js'

/** A plan of 300 thick segments with 40 openings, turned by 30°: union, difference, inset. `initGeometry` must have run. */
export function bench(): readonly { name: string; run: () => void }[] {
  const walls = Array.from({ length: 300 }, (_, k) =>
    box((k % 20) * 0.6, Math.floor(k / 20) * 0.9, k % 2 ? 3 : 0.25, k % 2 ? 0.25 : 3),
  )
  const openings = Array.from({ length: 40 }, (_, k) => box((k % 8) * 1.5, Math.floor(k / 8) * 2.7, 0.9, 0.3))
  const plan = difference(unionRings(walls), unionRings(openings))
  return [
    { name: 'unite 300 walls', run: () => void unionRings(walls) },
    { name: 'cut 40 openings', run: () => void difference(unionRings(walls), unionRings(openings)) },
    { name: 'inset a plan, mitred', run: () => void inset(plan, 0.025, 'mitre') },
    { name: 'inset a plan, round', run: () => void inset(plan, 0.025, 'round') },
  ]
}

function box(x: number, y: number, width: number, height: number): Ring {
  const corners: readonly Point[] = [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ]
  const [c, s] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)]
  return corners.map(([u, v]): Point => [u * c - v * s, u * s + v * c])
}
