import { assert } from '../../result/index.js'
import { thicknessIn } from './plan-mesh.js'
import { levelsOf, type Shell } from './shell-model.js'

/** The program's factors are those of a thousandth of the weight: it looks for large ones. */
export const DECK_WEIGHT_SHARE = 1e-3

/**
 * One factor to a share of 1e-4 in twenty vectors. With its own number of vectors the program answers a higher one on two of
 * our walls: 12 % and 38 % high.
 */
const SEARCH = '1, 1e-4, 20, 1000'

/**
 * A shell as an input deck of CalculiX: `*BUCKLE` under gravity, the lowest factor. Element for element the same S8R mesh,
 * foot clamped, one material per row with the modulus at the row's middle.
 */
export function calculixDeck(shell: Shell): string {
  const { mesh, rows } = shell
  assert(!shell.held && mesh.edges.every(({ rows: own }) => !own), 'a deck has whole rows on a clamped foot')
  const levels = levelsOf(shell)
  const corners = mesh.positions.length
  const inPosition = 2 * rows + 1
  const node = (block: number, level: number) =>
    1 +
    (block < corners
      ? block * inPosition + level
      : corners * inPosition + (block - corners) * (rows + 1) + level)
  const nodes: string[] = []
  mesh.positions.forEach(([x, y], i) => {
    for (let level = 0; level < inPosition; level++) {
      const [foot, top] = [levels[Math.floor(level / 2)]!, levels[Math.ceil(level / 2)]!]
      nodes.push(card(node(i, level), x, y, (foot + top) / 2))
    }
  })
  mesh.edges.forEach(({ from, to }, e) => {
    const [[ax, ay], [bx, by]] = [mesh.positions[from]!, mesh.positions[to]!]
    levels.forEach((level, row) => {
      nodes.push(card(node(corners + e, row), (ax + bx) / 2, (ay + by) / 2, level))
    })
  })
  const sets = new Map<
    string,
    { readonly row: number; readonly thickness: number; readonly lines: string[] }
  >()
  mesh.edges.forEach((edge, e) => {
    for (let row = 0; row < rows; row++) {
      const thickness = thicknessIn(edge, row)
      const key = `R${row}T${Math.round(thickness * 1e6)}`
      const set = sets.get(key) ?? { row, thickness, lines: [] }
      sets.set(key, set)
      const [{ from, to }, middle, base] = [edge, corners + e, 2 * row]
      const own = [node(from, base), node(to, base), node(to, base + 2), node(from, base + 2)]
      own.push(node(middle, row), node(to, base + 1), node(middle, row + 1), node(from, base + 1))
      set.lines.push(`${1 + row * mesh.edges.length + e}, ${own.join(', ')}`)
    }
  })
  const foot = [...mesh.positions, ...mesh.edges].map((_, block) => `${node(block, 0)}, 1, 6`)
  const parts = [...sets].map(([key, set]) => [
    `*ELEMENT, TYPE=S8R, ELSET=${key}\n${set.lines.join('\n')}`,
    `*MATERIAL, NAME=M${key}\n*ELASTIC\n${shell.modulusAt((levels[set.row]! + levels[set.row + 1]!) / 2)}, ${shell.poisson}\n*DENSITY\n${shell.density}`,
    `*SHELL SECTION, ELSET=${key}, MATERIAL=M${key}\n${set.thickness}`,
  ])
  return [
    `*NODE, NSET=ALL\n${nodes.join('\n')}`,
    ...parts.flat(),
    `*ELSET, ELSET=ALL\n${[...sets.keys()].join('\n')}`,
    `*BOUNDARY\n${foot.join('\n')}`,
    `*STEP\n*BUCKLE\n${SEARCH}`,
    `*DLOAD\nALL, GRAV, ${shell.gravity * DECK_WEIGHT_SHARE}, 0, 0, -1\n*END STEP\n`,
  ].join('\n')
}

/** A field has twenty characters at most. */
const card = (...fields: readonly number[]): string =>
  fields.map(field => Number(field.toFixed(9))).join(', ')
