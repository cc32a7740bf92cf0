import { formatQuantity } from '../quantity/index.js'
import type { Problem } from '../result/index.js'
import { checkWalls, findJunctions, type WallParts } from '../wall/index.js'
import { emptyHeights, type Rise } from './empty-heights.js'
import { checkManual } from './manual-sections.js'
import { mergeStretches } from './merge-stretches.js'
import { connectedParts } from './partition.js'
import type { Stretch } from './section.js'
import { sectionGraph } from './section-graph.js'
import type { SectionJob } from './section-job.js'

/** Everything in walls and sections that cannot be built as it stands. Sections are looked at once their walls are sound. */
export function checkBuildable(job: SectionJob & WallParts): readonly Problem[] {
  const unsound = checkWalls(job)
  return unsound.length > 0 ? unsound : checkSections(job)
}

/**
 * Heights at which a section would have nothing to print: of each section set by hand, or of each piece of the plan that
 * hangs together, which no division can help. Of walls that are sound in themselves.
 */
const checkSections = (job: SectionJob): readonly Problem[] =>
  job.sections.length > 0 && checkManual(job).length === 0 ? emptySections(job) : emptyPieces(job)

/** Sections set by hand that are nothing but sill and head on some height. */
export function emptySections(job: SectionJob): readonly Problem[] {
  const junctions = findJunctions(job.walls)
  return job.sections.flatMap((section, i) =>
    emptyHeights(job, mergeStretches(section.stretches), junctions).map(rise => ({
      code: 'section/nothing-to-print',
      at: `sections[${i}]`,
      say: `Section ${section.id} has nothing to print ${saidOf(job, section.stretches, rise)}, but a section is printed layer on layer from the slab to its top. Take in a piece of wall that stands at these heights, at least a bead wide.`,
    })),
  )
}

function emptyPieces(job: SectionJob): readonly Problem[] {
  if (job.walls.length === 0) return []
  const graph = sectionGraph(job, {})
  const parts = connectedParts(graph, () => true)
  return [...new Set(parts)].flatMap(part => {
    const stretches = mergeStretches(
      graph.blocks.flatMap(({ stretches }, i) => (parts[i] === part ? stretches : [])),
    )
    const ids = [...new Set(stretches.map(({ wall }) => wall))]
    const walls = ids.length > 1 ? `Walls ${ids.join(', ')} have` : `Wall ${ids[0]} has`
    return emptyHeights(job, stretches).map(rise => ({
      code: 'wall/nothing-to-print',
      at: `walls[${job.walls.findIndex(({ id }) => id === ids[0])}]`,
      say: `${walls} nothing to print ${saidOf(job, stretches, rise)}, and walls are printed layer on layer from the slab to their top. Start from the slab, leave a pier beside the opening, or join on a wall that stands at these heights.`,
    }))
  })
}

/** `from 0.9 m to 2.3 m (opening F1)`. */
function saidOf(
  { openings, units = 'metric' }: SectionJob,
  stretches: readonly Stretch[],
  rise: Rise,
): string {
  const [from, to] = [rise.from, rise.to].map(height => formatQuantity(height, 'length', units))
  const open = openings.filter(
    ({ wall, at, width, sill, head }) =>
      sill < rise.to &&
      head > rise.from &&
      stretches.some(each => each.wall === wall && each.from < at + width / 2 && each.to > at - width / 2),
  )
  const names = open.map(({ id }) => id).join(', ')
  return `from ${from} to ${to}${names ? ` (opening ${names})` : ''}`
}
