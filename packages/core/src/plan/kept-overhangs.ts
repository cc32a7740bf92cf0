import type { Job } from '../job/index.js'
import type { Finding } from '../result/index.js'
import type { Section } from '../section/index.js'
import { checkOverhang, type SectionBands } from '../wall/index.js'

/** What hangs over in one section, with all that was looked at. */
export interface KeptOverhangs {
  /** The bands' own bodies: they stay the same objects while their plan does. */
  readonly bodies: readonly SectionBands['bands'][number]['body'][]
  readonly text: string
  readonly findings: readonly Finding[]
}

/** What hangs over, section by section; one whose bands, openings and embeds stay keeps its findings. */
export function keptOverhangs(
  job: Job,
  sections: readonly Section[],
  bands: readonly SectionBands[],
  cache: Map<string, KeptOverhangs>,
): readonly Finding[] {
  return sections.flatMap((section, i) => {
    const laid = bands[i]!
    const bodies = laid.bands.map(band => band.body)
    const text = textOf(job, section, laid)
    const known = cache.get(section.id)
    if (known && known.text === text && known.bodies.every((body, k) => body === bodies[k]))
      return known.findings
    const findings = checkOverhang(job, laid)
    cache.set(section.id, { bodies, text, findings })
    return findings
  })
}

/** Carriers lie in walls that the section prints, or that meet it at a joint. */
function textOf(
  { print, walls, openings, embeds, units }: Job,
  section: Section,
  laid: SectionBands,
): string {
  const own = new Set([
    ...section.stretches.map(({ wall }) => wall),
    ...section.joints.flatMap(({ wall, ref }) => [wall, ref]),
  ])
  return JSON.stringify([
    print,
    units,
    walls.filter(({ id }) => own.has(id)),
    openings.filter(({ wall }) => own.has(wall)),
    embeds.filter(({ wall, method }) => own.has(wall) && method === 'gap'),
    laid.bands.map(({ fromLayer, toLayer }) => [fromLayer, toLayer]),
  ])
}
