import type { Job } from '../job/index.js'
import type { SectionRoutes } from '../route/index.js'
import type { Section } from '../section/index.js'
import { type StandGeometry, standGeometry } from '../stand/index.js'
import type { SectionBands } from '../wall/index.js'

/** What may buckle of a section, by its routes: those stay the same object while its beads do. */
export type KnownGeometry = WeakMap<SectionRoutes, { readonly key: string; readonly geometry: StandGeometry }>

/** The panels of a section with the bays of its beads; looked for anew where beads, walls or openings have changed. */
export function keptGeometry(
  job: Pick<Job, 'walls' | 'openings' | 'print' | 'units'>,
  section: Section,
  laid: SectionBands,
  routes: SectionRoutes,
  known: KnownGeometry,
): StandGeometry {
  const { walls, openings, print, units } = job
  const on = new Set(section.stretches.map(({ wall }) => wall))
  const [own, holes] = [walls.filter(({ id }) => on.has(id)), openings.filter(({ wall }) => on.has(wall))]
  const key = JSON.stringify([section, own, holes, print, units])
  const before = known.get(routes)
  if (before?.key === key) return before.geometry
  const geometry = standGeometry(section, walls, openings, print, laid.bands, units)
  known.set(routes, { key, geometry })
  return geometry
}
