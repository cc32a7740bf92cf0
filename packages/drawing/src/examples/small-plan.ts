import type { Campaign } from '@dawnlift/core/campaign'
import type { Job } from '@dawnlift/core/job'
import type { Limit } from '@dawnlift/core/limit'
import type { Plan } from '@dawnlift/core/plan'
import type { Section } from '@dawnlift/core/section'
import { tallyOf } from '@dawnlift/core/tally'
import { callsOf, checkCalls, checkClashes } from '@dawnlift/core/trade'
import { smallBands } from './small-bands.js'
import { smallCampaign } from './small-campaign.js'
import { smallCure } from './small-cure.js'
import { smallJob } from './small-job.js'

/** Two sections: the south and east walls, and the north and west walls. */
export const smallSections: readonly Section[] = [
  {
    id: 'A',
    stretches: [
      { wall: 'S', from: 0, to: 6 },
      { wall: 'E', from: 0, to: 4 },
    ],
    joints: [
      { wall: 'E', at: 4, point: [6, 4], kind: 'marked', ref: 'E' },
      { wall: 'S', at: 0, point: [0, 0], kind: 'marked', ref: 'S' },
    ],
  },
  {
    id: 'B',
    stretches: [
      { wall: 'N', from: 0, to: 6 },
      { wall: 'W', from: 0, to: 4 },
    ],
    joints: [
      { wall: 'N', at: 0, point: [6, 4], kind: 'marked', ref: 'N' },
      { wall: 'W', at: 4, point: [0, 0], kind: 'marked', ref: 'W' },
    ],
  },
]

/** Cut from 30 to 120 minutes after a layer is down: a plain stand-in for the mix model. */
export const smallCutWindow = (down: number) => ({ from: down + 1800, until: down + 7200 })

/** A whole plan of a small invented pavilion, made by hand from the contract types. */
export function smallPlan(job: Job = smallJob, campaign: Campaign = smallCampaign): Plan {
  const { bands, routes } = smallBands(job, smallSections)
  const parts = { job, sections: smallSections, routes, campaign, cutWindow: smallCutWindow }
  const calls = callsOf(parts)
  return {
    job,
    sections: smallSections,
    bands,
    routes,
    campaign,
    calls,
    cure: smallCure(campaign),
    pours: [],
    tally: tallyOf({ job, campaign }),
    snaps: [],
    findings: [...checkClashes(job), ...checkCalls(parts, calls)],
  }
}

/** The same plan on its second print day, with the first lift of that day just down. */
export function halfOver(plan: Plan): Plan {
  const lifts = plan.campaign.days.slice(0, 2).flatMap(day => day.lifts)
  const over = lifts.slice(0, -1)
  const standing = ['A', 'B'].map(section => {
    const own = over.filter(lift => lift.section === section)
    return { section, layers: own.at(-1)!.lastLayer, lastEnd: own.at(-1)!.end, lifts: own.length }
  })
  return { ...plan, soFar: { now: over.at(-1)!.end, standing, changes: [], kept: true, lost: [] } }
}

/** Plain words for a limit, until the reader brings better ones. */
export const smallSay = (limit: Limit): string =>
  `${limit.kind.replaceAll('-', ' ')}: ${limit.demand.toFixed(1)} of ${limit.capacity.toFixed(1)} ${limit.unit}`
