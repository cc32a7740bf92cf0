import { beforeAll, describe, expect, it } from 'vitest'
import { initGeometry, type Path, reversePath } from '../geometry/index.js'
import type { Band, Bead } from './bead.js'
import { fixture, line, wall } from './fixtures/invented.js'
import { layAllBeads } from './lay-beads.js'
import { validateBand } from './validate-band.js'

beforeAll(() => initGeometry())

const good = (): Band => {
  const { parts, sections } = fixture('good', { walls: [wall('w', line([0, 0], [3, 0]))] })
  return layAllBeads(parts, sections)[0]!.bands[0]!
}
const withPath = (role: Bead['role'], change: (path: Path) => Path): Band => {
  const band = good()
  return {
    ...band,
    beads: band.beads.map(bead => (bead.role === role ? { ...bead, path: change(bead.path) } : bead)),
  }
}
const shifted = (path: Path, by: number): Path => ({
  ...path,
  points: path.points.map(([x, y]) => [x, y + by] as const),
})

describe('validateBand', () => {
  it('has nothing to say of a good band', () => expect(validateBand(good())).toEqual([]))
  it('finds a bead a millimetre outside the body', () =>
    expect(validateBand(withPath('wythe', path => shifted(path, 0.001)))).toContainEqual(
      expect.stringContaining('A.1.w1 leaves the body'),
    ))
  it('finds a face without a bead', () =>
    expect(
      validateBand({ ...good(), beads: good().beads.filter(bead => bead.role === 'web') }).join(),
    ).toContain('of face at'))
  it('finds a wythe that runs the wrong way round', () =>
    expect(validateBand(withPath('wythe', reversePath))).toEqual(['A.1.w1 has its face on the left']))
  it('finds a path that crosses itself', () =>
    expect(
      validateBand(
        withPath('web', () => ({
          points: [
            [1, -0.05],
            [1.4, 0.05],
            [1.4, -0.05],
            [1, 0.05],
          ],
          bulges: [0, 0, 0],
          closed: false,
        })),
      ),
    ).toEqual([expect.stringContaining('crosses itself')]))
  it('finds a missing bulge', () =>
    expect(
      validateBand({
        ...good(),
        beads: [
          {
            ...good().beads[0]!,
            path: {
              points: [
                [0, 0],
                [1, 0],
              ],
              bulges: [0],
              closed: false,
            },
          },
        ],
      }).length,
    ).toBeGreaterThan(0))
})
