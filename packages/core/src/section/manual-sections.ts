import { pathLength } from '../geometry/index.js'
import type { Wall } from '../job/index.js'
import { formatQuantity, type Metres } from '../quantity/index.js'
import type { Problem } from '../result/index.js'
import type { SectionJob } from './section-job.js'

/** Stations closer than this are the same [m]. */
const SAME = 1e-3

interface Claim {
  readonly section: string
  readonly at: string
  readonly wall: string
  readonly from: number
  readonly to: number
}

/** A station as the site measures it. */
type SayStation = (station: Metres) => string

/** Everything wrong with sections set by hand: unknown walls, stretches off the wall, overlaps, gaps, doubled names. */
export function checkManual(job: SectionJob): readonly Problem[] {
  if (job.sections.length === 0) return []
  const said: SayStation = station => formatQuantity(station, 'length', job.units ?? 'metric')
  const claims = job.sections.flatMap((section, i) =>
    section.stretches.map((stretch, k) => ({
      section: section.id,
      at: `sections[${i}].stretches[${k}]`,
      ...stretch,
    })),
  )
  return [
    ...doubledNames(job),
    ...claims.flatMap(claim => checkClaim(job.walls, claim, said)),
    ...job.walls.flatMap(wall => checkCover(wall, claims, said)),
  ]
}

function doubledNames({ sections }: SectionJob): readonly Problem[] {
  return sections.flatMap((section, i) => {
    if (sections.findIndex(other => other.id === section.id) === i) return []
    const say = `Two sections are called ${section.id}. Give each its own name.`
    return [{ code: 'section/doubled-name', at: `sections[${i}].id`, say }]
  })
}

function checkClaim(walls: readonly Wall[], claim: Claim, said: SayStation): readonly Problem[] {
  const wall = walls.find(one => one.id === claim.wall)
  if (!wall) {
    const say = `Section ${claim.section} names wall ${claim.wall}, which the plan does not have.`
    return [{ code: 'section/unknown-wall', at: claim.at, say }]
  }
  const length = pathLength(wall.centreline)
  if (claim.from >= claim.to || claim.from < -SAME || claim.to > length + SAME) {
    const say = `Section ${claim.section} takes wall ${wall.id} from ${said(claim.from)} to ${said(claim.to)}; it runs from 0 to ${said(length)}.`
    return [{ code: 'section/off-the-wall', at: claim.at, say }]
  }
  return []
}

/** Every metre of the wall in exactly one section. */
function checkCover(wall: Wall, all: readonly Claim[], said: SayStation): readonly Problem[] {
  const claims = all.filter(claim => claim.wall === wall.id).sort((a, b) => a.from - b.from)
  const length = pathLength(wall.centreline)
  const problems: Problem[] = []
  let covered = 0
  for (const claim of [...claims, { section: '', at: 'sections', wall: wall.id, from: length, to: length }]) {
    if (claim.from > covered + SAME) {
      const say = `Wall ${wall.id} is in no section from ${said(covered)} to ${said(claim.from)}. Add it to one.`
      problems.push({ code: 'section/gap', at: claim.at, say })
    }
    if (claim.from < covered - SAME && claim.section !== '') {
      const say = `Section ${claim.section} takes wall ${wall.id} from ${said(claim.from)}, but up to ${said(covered)} it is already in another stretch.`
      problems.push({ code: 'section/overlap', at: claim.at, say })
    }
    covered = Math.max(covered, claim.to)
  }
  return problems
}
