import { nearestOnPath } from '@dawnlift/core/geometry'
import type { Job } from '@dawnlift/core/job'
import type { Finding, Problem } from '@dawnlift/core/result'

/** A place of the app, and what to have chosen there. */
export interface WhereTo {
  readonly place: string
  readonly select?: {
    readonly kind: 'wall' | 'embed' | 'opening' | 'column' | 'lift' | 'section'
    readonly id: string
  }
}

type Parts = Pick<Job, 'walls' | 'embeds' | 'openings' | 'columns'>

/** Where a finding is mended: by the thing it names, or else at the wall nearest to its place. */
export function whereToMend(
  finding: Pick<Finding, 'at' | 'check' | 'point'>,
  job: Parts,
  lifts: ReadonlySet<string>,
): WhereTo {
  const named = finding.at.split(/[\s,:]+/)
  const has = (things: readonly { readonly id: string }[]) =>
    named.find(id => things.some(each => each.id === id))
  const lift = named.find(id => lifts.has(id))
  const embed = has(job.embeds)
  const opening = has(job.openings)
  const column = has(job.columns)
  const wall = has(job.walls) ?? wallAt(finding.point, job)
  if (lift) return { place: 'days', select: { kind: 'lift', id: lift } }
  if (embed) return { place: 'walls', select: { kind: 'embed', id: embed } }
  if (opening) return { place: 'walls', select: { kind: 'opening', id: opening } }
  if (column) return { place: 'walls', select: { kind: 'column', id: column } }
  if (wall) return { place: 'walls', select: { kind: 'wall', id: wall } }
  return {
    place: /pump|hose|mix/.test(finding.check)
      ? 'mix'
      : /campaign|day/.test(finding.check)
        ? 'days'
        : 'walls',
  }
}

function wallAt(point: Finding['point'], { walls }: Parts): string | undefined {
  if (!point) return undefined
  const away = ({ centreline }: Job['walls'][number]) => nearestOnPath(centreline, point).distance
  return [...walls].sort((a, b) => away(a) - away(b))[0]?.id
}

/** Which place a problem of the document belongs to: `job.yaml:41:9 walls[3].thickness` is about walls. */
export function placeOfProblem(problem: Pick<Problem, 'at'>): string {
  const path = problem.at.split(' ').at(-1) ?? ''
  const block = /^[A-Za-z]+/.exec(path)?.[0] ?? ''
  if (
    /^(walls|openings|embeds|columns|wallTypes|openingTypes|embedTypes|columnTypes|drawing|sections)$/.test(
      block,
    )
  )
    return 'walls'
  if (block === 'mix' || /mix-tests/.test(problem.at)) return 'mix'
  return block === 'costs' ? 'tally' : 'site'
}
