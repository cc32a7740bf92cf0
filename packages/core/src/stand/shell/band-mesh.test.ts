import { describe, expect, it } from 'vitest'
import type { Point } from '../../geometry/index.js'
import { bandMesh } from './band-mesh.js'
import { lineMesh, type ShellLine } from './line-mesh.js'
import { edgeLength, type PlanMesh, straightMesh, thicknessIn } from './plan-mesh.js'
import { shellBuckling, weightOf } from './shell-buckling.js'
import type { Shell } from './shell-model.js'

const line = (points: readonly Point[], hangs = false): ShellLine => ({
  path: { points, bulges: points.slice(1).map(() => 0), closed: false },
  thickness: 0.05,
  hangs,
})
/** Two wythes closed round both ends, as a wall is printed. */
const wythes: readonly ShellLine[] = [
  {
    path: {
      points: [
        [0, 0],
        [1.2, 0],
        [1.2, 0.2],
        [0, 0.2],
      ],
      bulges: [0, 0, 0, 0],
      closed: true,
    },
    thickness: 0.05,
  },
]
const ties = (...at: readonly number[]) =>
  at.map(x =>
    line(
      [
        [x, 0.03],
        [x, 0.17],
      ],
      true,
    ),
  )
const fresh = { poisson: 0.3, density: 2100, gravity: 9.81, modulusAt: (at: number) => 6e5 - 4e5 * at }
const factorOf = (shell: Shell) => {
  const answer = shellBuckling(shell)
  return answer.kind === 'buckles' ? answer.factor : Number.NaN
}
const lengthIn = (mesh: PlanMesh, row: number) =>
  mesh.edges.reduce((sum, edge) => sum + (thicknessIn(edge, row) > 0 ? edgeLength(mesh, edge) : 0), 0)

describe('plans that stand over each other', () => {
  const plan = [...wythes, ...ties(0.4, 0.8)]
  const moved = [...wythes, ...ties(0.3, 0.6, 0.9)]

  it('bear what one plan bears when they are the same', () => {
    const by = (mesh: PlanMesh) => factorOf({ ...fresh, mesh, height: 0.6, rows: 4 })
    const twice = by(bandMesh([plan, plan], [0, 0, 1, 1], 0.15))
    expect(twice / by(bandMesh([plan], [0, 0, 0, 0], 0.15))).toBeCloseTo(1, 9)
    // a tie set onto its wythes is longer than its bead, two pieces instead of one: 0.2 % softer
    expect(Math.abs(twice / by(lineMesh(plan, 0.15)) - 1)).toBeLessThan(0.005)
  })

  it('share the pieces of the wythes, whatever ties there are', () => {
    const mesh = bandMesh([plan, moved], [0, 1], 0.15)
    const lengthwise = mesh.edges.filter(
      ({ from, to }) => mesh.positions[from]![1] === mesh.positions[to]![1],
    )
    expect(lengthwise.every(edge => thicknessIn(edge, 0) > 0 && thicknessIn(edge, 1) > 0)).toBe(true)
  })

  it('keep the length of the beads of each', () => {
    const mesh = bandMesh([plan, moved], [0, 1], 0.15)
    // ties reach from middle to middle
    expect(lengthIn(mesh, 0)).toBeCloseTo(2.8 + 2 * 0.2, 9)
    expect(lengthIn(mesh, 1)).toBeCloseTo(2.8 + 3 * 0.2, 9)
  })

  it('bear between what each would by itself, from foot to top', () => {
    const height = 0.6
    const by = (planOf: readonly number[]) =>
      factorOf({
        ...fresh,
        mesh: bandMesh([wythes, moved], planOf, 0.15),
        height,
        rows: planOf.length,
      })
    const [bare, mixed, tied] = [by([0, 0, 0, 0]), by([1, 1, 0, 0]), by([1, 1, 1, 1])]
    expect(mixed).toBeGreaterThan(1.05 * bare)
    expect(mixed).toBeLessThan(0.95 * tied)
  })

  it('do not fail by a tie that begins across the cavity', () => {
    const mesh = bandMesh([plan, moved], [0, 0, 0, 1], 0.15)
    const shell = { ...fresh, mesh, height: 0.6, rows: 4, levels: [0, 0.19, 0.38, 0.58, 0.6] }
    const steady = { ...shell, mesh: bandMesh([plan], [0, 0, 0, 0], 0.15) }
    expect(factorOf(shell) / factorOf(steady)).toBeGreaterThan(0.95)
  })
})

describe('rows of shells', () => {
  const wall = { ...fresh, mesh: straightMesh(1, 8, 0.05), height: 0.4, rows: 4 }

  it('may have heights of their own', () => {
    const uneven = { ...wall, rows: 5, levels: [0, 0.05, 0.15, 0.2, 0.3, 0.4] }
    // both within 1 % of rows without end, from the order of convergence
    expect(Math.abs(factorOf(uneven) / factorOf(wall) - 1)).toBeLessThan(0.01)
    expect(weightOf(uneven)).toBeCloseTo(weightOf(wall), 9)
  })

  it('leave out what is not printed in them', () => {
    const edges = wall.mesh.edges.map((edge, i) => ({ ...edge, rows: [0.05, 0.05, 0.05, i < 4 ? 0.05 : 0] }))
    expect(weightOf({ ...wall, mesh: { ...wall.mesh, edges } })).toBeCloseTo((7 / 8) * weightOf(wall), 9)
  })

  it('bear on a lintel over an opening, which holds no more than their weight', () => {
    const over = (from: number) =>
      wall.mesh.edges.map((edge, i) => ({
        ...edge,
        rows: [0, 1, 2, 3].map(row => (row < from && i > 2 && i < 5 ? 0 : 0.05)),
      }))
    const opened = factorOf({ ...wall, mesh: { ...wall.mesh, edges: over(2) } })
    expect(opened).toBeGreaterThan(0.5 * factorOf(wall))
    expect(opened).toBeLessThan(1.5 * factorOf(wall))
  })

  it('are held where they begin when they touch nothing that stands', () => {
    const edges = wall.mesh.edges.map((edge, i) => ({
      ...edge,
      rows: i === 3 ? [0, 0, 0, 0] : [0.05, 0.05, 0.05, 0.05],
    }))
    const floating = edges.map((edge, i) => (i > 3 ? { ...edge, rows: [0, 0, 0.05, 0.05] } : edge))
    expect(factorOf({ ...wall, mesh: { ...wall.mesh, edges: floating } })).toBeGreaterThan(0)
  })
})
