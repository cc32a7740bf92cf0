import { describe, expect, it } from 'vitest'
import { coarseShell, refined } from './coarse-shell.js'
import { doubleSection } from './double-section.fixture.js'
import { straightMesh } from './plan-mesh.js'
import { UNKNOWNS } from './rectangle.js'
import { shellBuckling } from './shell-buckling.js'
import { levelsOf, type Shell, type ShellSystem, shellSystem } from './shell-model.js'

/** A field of the height as moves of all nodes, the same along the plan. */
function sampled(system: ShellSystem, field: (height: number) => number): Float64Array {
  const { nodes, offsets, shell } = system
  const moves = new Float64Array(offsets[offsets.length - 1]!)
  const levels = levelsOf(shell)
  nodes.firstOf.forEach((firsts, block) => {
    const halves = block < shell.mesh.positions.length
    firsts.forEach((first, level) => {
      if (first < 0) return
      const [low, high] = halves ? [Math.floor(level / 2), Math.ceil(level / 2)] : [level, level]
      const height = (levels[low]! + levels[high]!) / 2
      for (let a = 0; a < UNKNOWNS; a++) moves[offsets[block]! + first + a] = (1 + a) * field(height)
    })
  })
  return moves
}

describe('a shell in fewer rows', () => {
  const shell = doubleSection(3)

  it('has the same plan, height and foot in a third of the rows', () => {
    const coarse = coarseShell(shell)!
    expect(levelsOf(coarse.shell)).toEqual([0, 0.5, 1])
    expect(coarse.rowOf).toEqual([0, 0, 0, 1, 1, 1])
    expect(coarse.shell.mesh.edges).toEqual(shell.mesh.edges)
  })

  it('keeps rows with other beads apart, and is none where that leaves too many', () => {
    const edges = shell.mesh.edges.map((edge, e) => ({
      ...edge,
      rows: [0, 1, 2, 3, 4, 5, 6, 7, 8].map(row => (e > 3 || row < 4 ? 0.05 : 0)),
    }))
    const banded: Shell = { ...shell, rows: 9, mesh: { ...shell.mesh, edges } }
    expect(coarseShell(banded)).toBeUndefined()
    const low = {
      ...banded,
      mesh: {
        ...banded.mesh,
        edges: edges.map(edge => ({
          ...edge,
          rows: edge.rows.map((t, row) => (row < 3 ? 0.05 : t && 0.06)),
        })),
      },
    }
    const { shell: coarse, rowOf } = coarseShell({
      ...low,
      mesh: { ...low.mesh, edges: low.mesh.edges.slice(4) },
    })!
    expect(rowOf).toEqual([0, 0, 0, 1, 1, 1, 2, 2, 2])
    expect(coarse.mesh.edges.every(({ rows }) => rows!.join() === '0.05,0.06,0.06')).toBe(true)
  })

  it('hands its moves over exactly where they are a parabola of the height', () => {
    const coarse = coarseShell(shell)!
    const field = (height: number) => 3 * height - 2 * height ** 2
    const [few, many] = [shellSystem(coarse.shell), shellSystem(shell)]
    const moves = refined(few, sampled(few, field), many, coarse.rowOf)
    const exact = sampled(many, field)
    // middles of edges lie between two heights of a coarse element only: there the element is straight
    const { firstOf } = many.nodes
    shell.mesh.positions.forEach((_, position) => {
      for (const first of firstOf[position]!)
        if (first >= 0)
          for (let a = 0; a < UNKNOWNS; a++) {
            const at = many.offsets[position]! + first + a
            expect(moves[at]).toBeCloseTo(exact[at]!, 12)
          }
    })
  })

  it('shortens the search by a quarter and more, the same factor', () => {
    const wall: Shell = { ...shell, mesh: straightMesh(6, 40, 0.05), height: 0.6 }
    const asked = (each: Shell) => {
      const shares: number[] = []
      const found = shellBuckling(each, share => shares.push(share) > 0)
      return {
        steps: shares.filter(share => share >= 0.7).length,
        factor: found.kind === 'buckles' && found.factor,
      }
    }
    // rows a billionth apart in thickness are not taken together
    const edges = wall.mesh.edges.map(edge => ({
      ...edge,
      rows: [0, 1, 2, 3, 4, 5].map(row => 0.05 * (1 + 1e-9 * row)),
    }))
    const [begun, alone] = [asked(wall), asked({ ...wall, mesh: { ...wall.mesh, edges } })]
    expect(begun.steps).toBeLessThan(0.75 * alone.steps)
    expect(Number(begun.factor) / Number(alone.factor)).toBeCloseTo(1, 4)
  })
})
