import { type Campaign, type CampaignInput, scheduleCampaign } from '../campaign/index.js'
import { checkLog, coldJoints, type LostTime, lostTime, resumeCampaign, type SiteLog } from '../log/index.js'
import type { Finding } from '../result/index.js'
import type { SoFar } from './plan.js'

/** The campaign, what its checks are to be held against, and what really stands if something does. */
export interface PlannedDays {
  readonly campaign: Campaign
  /** The days to come with what they were planned from: days over cannot break a rule any more. */
  readonly ahead: { readonly input: CampaignInput; readonly campaign: Campaign }
  readonly soFar?: SoFar
  readonly findings: readonly Finding[]
}

/** The days from the first layer on; with a site log, what is left from what stands. */
export function plannedDays(input: CampaignInput, log: SiteLog | undefined): PlannedDays {
  if (!log) {
    const campaign = scheduleCampaign(input)
    return { campaign, ahead: { input, campaign }, findings: [] }
  }
  const problems = checkLog(log.events, { ...input, sections: loggedSections(input) })
  const trusted = problems.length > 0 ? { ...log, events: [] } : log
  const { campaign, rest, built, standing, changes, kept } = resumeCampaign(input, trusted)
  const lost: readonly LostTime[] = lostTime(trusted.events, log.now)
  return {
    campaign,
    ahead: rest,
    soFar: { now: log.now, standing, changes, kept, lost },
    findings: [...problems.map(unusable), ...coldJoints(input, trusted.events, built)],
  }
}

const loggedSections = ({ work }: Pick<CampaignInput, 'work'>) =>
  work.map(({ section, printTimes }) => ({ section, layers: printTimes.length }))

/** A log that contradicts itself is not planned from: a wrong height would be worse than an old plan. */
const unusable = ({ at, say }: { readonly at: string; readonly say: string }): Finding => ({
  check: 'site-log',
  at,
  demand: 1,
  capacity: 0,
  unit: '',
  source: 'the site log',
  verdict: 'fail',
  say: `${say} Until then the whole log is left out.`,
})
