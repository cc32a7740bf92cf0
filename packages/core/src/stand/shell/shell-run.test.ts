import { describe, expect, it } from 'vitest'
import { type PlanMesh, ringMesh, straightMesh } from './plan-mesh.js'
import { runKind } from './run-stiffness.js'
import { shellBuckling } from './shell-buckling.js'
import { type Shell, shellSystem } from './shell-model.js'
import { shellRuns } from './shell-run.js'

const shell = (mesh: PlanMesh): Shell => ({
  mesh,
  height: 0.6,
  rows: 3,
  modulusAt: at => 240e3 - 200e3 * at,
  poisson: 0.3,
  density: 2100,
  gravity: 9.81,
})
const kindsOf = (mesh: PlanMesh) => {
  const system = shellSystem(shell(mesh))
  return new Set(shellRuns(system).map(run => runKind(system, run)))
}
const factorOf = (mesh: PlanMesh) => {
  const found = shellBuckling(shell(mesh))
  return found.kind === 'buckles' ? found.factor : Number.NaN
}

/** A ring with a wall of two pieces across it. */
const crossed = (): PlanMesh => {
  const { positions, edges } = ringMesh(0.5, 12, 0.05)
  const across = [
    { from: 0, to: 12, thickness: 0.05 },
    { from: 12, to: 6, thickness: 0.05 },
  ]
  return { positions: [...positions, [0, 0]], edges: [...edges, ...across] }
}

describe('runs of a plan', () => {
  it.each([
    ['a leaf', straightMesh(3, 20, 0.05)],
    ['a ring', ringMesh(0.5, 12, 0.05)],
    ['a ring with a wall across', crossed()],
  ])('have every edge once, from end to end: %s', (_, mesh) => {
    const runs = shellRuns(shellSystem(shell(mesh)))
    expect(runs.flatMap(({ pieces }) => pieces).sort((a, b) => a - b)).toEqual(mesh.edges.map((__, e) => e))
    for (const { pieces, positions } of runs)
      pieces.forEach((e, k) => {
        const { from, to } = mesh.edges[e]!
        expect(new Set([from, to])).toEqual(new Set([positions[k]!, positions[k + 1]!]))
      })
  })

  it('have a joint where beads meet', () => {
    const runs = shellRuns(shellSystem(shell(crossed())))
    const inside = runs.flatMap(({ positions }) => positions.slice(1, -1))
    expect(inside).not.toContain(0)
    expect(inside).not.toContain(6)
    expect(inside).toContain(12)
  })

  it('are of one kind where they repeat, straight or round', () => {
    expect(kindsOf(straightMesh(3, 20, 0.05)).size).toBe(1)
    expect(kindsOf(ringMesh(0.5, 12, 0.05)).size).toBe(1)
  })

  it('are of another kind where beads are thicker', () => {
    const { positions, edges } = straightMesh(3, 20, 0.05)
    const mesh = { positions, edges: edges.map((edge, e) => ({ ...edge, thickness: e < 8 ? 0.05 : 0.06 })) }
    expect(kindsOf(mesh).size).toBe(2)
  })

  // nothing is shared where no two pieces are alike to nine digits
  it.each([
    ['a leaf', straightMesh(3, 20, 0.05)],
    ['a ring with a wall across', crossed()],
  ])('bear what they bear when each is worked out by itself: %s', (_, mesh) => {
    const edges = mesh.edges.map((edge, e) => ({ ...edge, thickness: edge.thickness * (1 + 1e-9 * e) }))
    expect(kindsOf({ ...mesh, edges }).size).toBeGreaterThan(3)
    expect(factorOf(mesh) / factorOf({ ...mesh, edges })).toBeCloseTo(1, 6)
  })

  it('do not mind which way their pieces were drawn', () => {
    const mesh = crossed()
    const edges = mesh.edges.map((edge, e) => (e % 2 ? { ...edge, from: edge.to, to: edge.from } : edge))
    expect(factorOf({ ...mesh, edges }) / factorOf(mesh)).toBeCloseTo(1, 9)
  })
})
