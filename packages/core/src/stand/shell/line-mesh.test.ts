import { describe, expect, it } from 'vitest'
import { lineMesh } from './line-mesh.js'
import { edgeLength } from './plan-mesh.js'

describe('the plan of shells made from lines', () => {
  const line = (...points: readonly (readonly [number, number])[]) => ({
    path: { points, bulges: points.slice(1).map(() => 0), closed: false },
    thickness: 0.05,
  })
  it('joins a tie that laps onto its wythes', () => {
    const mesh = lineMesh(
      [line([0, 0], [1, 0]), line([0, 0.2], [1, 0.2]), line([0.3, 0.04], [0.6, 0.16])],
      10,
    )
    expect(mesh.positions).toHaveLength(6)
    expect(mesh.edges).toHaveLength(5)
  })
  it('leaves lines apart that do not touch', () => {
    const mesh = lineMesh([line([0, 0], [1, 0]), line([0, 0.2], [1, 0.2])], 10)
    expect(mesh.positions).toHaveLength(4)
  })
  it('sets a loop onto a solid wall, and onto nothing else', () => {
    const points = [
      [0.3, 0.1],
      [0.6, 0.1],
      [0.6, 0.5],
      [0.3, 0.5],
    ] as const
    const loop = { path: { points, bulges: [0, 0, 0, 0], closed: true }, thickness: 0.05 }
    const beside = { ...line([0, 0], [1, 0]), thickness: 0.2 }
    const apart = lineMesh([loop, beside], 10)
    expect(apart.positions).toHaveLength(6)
    expect(apart.edges).toHaveLength(5)
    for (const lines of [
      [loop, { ...beside, solid: true }],
      [{ ...beside, solid: true }, loop],
    ]) {
      const { positions, edges } = lineMesh(lines, 10)
      expect(positions).toHaveLength(6)
      const isBetween = ({ from, to }: { from: number; to: number }) =>
        [from, to].every(end => [0.3, 0.6].includes(positions[end]![0]) && positions[end]![1] === 0)
      const between = edges.filter(isBetween).reduce((sum, { thickness }) => sum + thickness, 0)
      expect(between).toBeCloseTo(0.25, 9)
    }
  })
  it('cuts a rounded loop at its corners alone', () => {
    const points = [
      [0.1, 0],
      [0.9, 0],
      [1, 0.1],
      [1, 0.5],
      [0.1, 0.5],
    ] as const
    const path = { points, bulges: [0, Math.tan(Math.PI / 8), 0, 0, 0], closed: true }
    expect(lineMesh([{ path, thickness: 0.05 }], 10).positions).toHaveLength(5)
  })
  it('makes a wythe thicker where a tie runs along it', () => {
    const mesh = lineMesh([line([0, 0], [1, 0]), line([0.2, 0.04], [0.6, 0.04])], 10)
    expect(mesh.edges.map(({ thickness }) => thickness)).toEqual([0.05, 0.1, 0.05])
  })
  it('keeps the length of what it cuts', () => {
    const mesh = lineMesh([line([0, 0], [1, 0], [1, 0.7])], 0.15)
    expect(mesh.edges.reduce((sum, edge) => sum + edgeLength(mesh, edge), 0)).toBeCloseTo(1.7, 12)
  })
})
