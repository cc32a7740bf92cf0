import type { Point } from '@dawnlift/core/geometry'
import type { Finding } from '@dawnlift/core/result'
import type { Draft } from './draft.js'
import { wallNear } from './plan/hit.js'
import { beside } from './plan/shapes.js'
import { findThing, type Thing } from './thing.js'

/** Findings that say the same of the same place, told once. */
export interface PinnedFinding {
  readonly number: number
  readonly finding: Finding
  readonly point?: Point
  /** What to choose on the plan for it. */
  readonly thing?: Thing
}

/** What the plan found wrong, worst first, numbered for the pins on the plan. */
export function pinnedFindings(draft: Draft, findings: readonly Finding[]): readonly PinnedFinding[] {
  const told = new Set<string>()
  return findings
    .filter(finding => finding.verdict !== 'pass')
    .filter(({ at, say }) => !told.has(`${at} ${say}`) && told.add(`${at} ${say}`))
    .sort((a, b) => Number(b.verdict === 'fail') - Number(a.verdict === 'fail'))
    .map((finding, index) => {
      const thing = placeOfFinding(draft, finding)
      const point = finding.point ?? pointOf(draft, thing)
      return { number: index + 1, finding, ...(point ? { point } : {}), ...(thing ? { thing } : {}) }
    })
}

/** The part a finding names, or else the wall nearest to its point. */
export function placeOfFinding(
  draft: Draft,
  { at, point }: Pick<Finding, 'at' | 'point'>,
): Thing | undefined {
  const names = at.split(/[\s/,]+/)
  for (const kind of ['opening', 'embed', 'column', 'wall'] as const)
    for (const id of names) if (findThing(draft, { kind, id })) return { kind, id }
  const near = point && wallNear(draft, point)
  return near && { kind: 'wall', id: near.wall }
}

function pointOf(draft: Draft, thing: Thing | undefined): Point | undefined {
  const found = findThing(draft, thing)
  if (!found || found.kind === 'wall') return undefined
  return beside(found.wall.centreline, found.part.at, 0)
}
