import { longestRest, structurationRest } from '../bond/index.js'
import type { LiftPhysics } from '../campaign/index.js'
import type { Job } from '../job/index.js'
import type { Instant } from '../quantity/index.js'
import { assert } from '../result/index.js'
import type { Section } from '../section/index.js'
import { makeStanding, type PaceTable, type StandGeometry, standGeometry } from '../stand/index.js'
import type { SectionBands } from '../wall/index.js'
import type { PrintHour } from '../weather/index.js'

/** The hour that holds this moment; the first or last one beyond the ends. */
export function hourAt(hours: readonly PrintHour[], at: Instant): PrintHour {
  const first = hours[0]
  assert(first, 'the plan has hours of weather')
  const index = Math.floor((at - first.start) / 3600)
  return hours[Math.min(hours.length - 1, Math.max(0, index))]!
}

/** What stands and what sticks on this job, as the scheduler asks it. */
export function sitePhysics(
  job: Job,
  sections: readonly Section[],
  bands: readonly SectionBands[],
  hours: readonly PrintHour[],
  paces: Map<string, PaceTable> = new Map(),
): LiftPhysics {
  return {
    standing: siteStanding(job, siteGeometry(job, sections, bands), paces),
    longestRest: siteRest(job, hours),
  }
}

/** The panels of every section, with the bays of their beads. */
export const siteGeometry = (
  job: Job,
  sections: readonly Section[],
  bands: readonly SectionBands[],
): readonly StandGeometry[] =>
  sections.map((section, index) =>
    standGeometry(section, job.walls, job.openings, job.print, bands[index]?.bands, job.units),
  )

export const siteStanding = (
  { mix, print, rules }: Pick<Job, 'mix' | 'print' | 'rules'>,
  sections: readonly StandGeometry[],
  paces: Map<string, PaceTable>,
): LiftPhysics['standing'] => makeStanding({ mix, print, rules, sections }, paces)

/** How long a layer may lie bare at any moment of these hours. */
export function siteRest(
  job: Pick<Job, 'mix' | 'print' | 'rules'>,
  hours: readonly PrintHour[],
): LiftPhysics['longestRest'] {
  const { layerHeight, speed } = job.print
  const options = { layerHeight, speed, stiffened: structurationRest(job.mix, layerHeight, speed) }
  const rests = new Map<number, ReturnType<LiftPhysics['longestRest']>>()
  return at => {
    // Weather comes by the hour; a rest that begins within the same five minutes has the same answer to a minute.
    const slot = Math.floor(at / 300)
    const known = rests.get(slot)
    if (known) return known
    const { seconds, limit } = longestRest(slot * 300, job.mix, hours, job.rules, options)
    const answer = { seconds, limit }
    rests.set(slot, answer)
    return answer
  }
}
