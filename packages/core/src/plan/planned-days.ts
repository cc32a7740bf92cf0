import { type Campaign, type CampaignInput, holdDays, scheduleCampaign } from '../campaign/index.js'
import {
  checkLog,
  coldJoints,
  holdResumed,
  type LostTime,
  lostTime,
  type ResumedCampaign,
  resumeCampaign,
  type SiteLog,
} from '../log/index.js'
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
  if (!log) return fromNothing(input, scheduleCampaign(input))
  const { trusted, findings } = trustedLog(input, log)
  return fromLog(input, trusted, findings, resumeCampaign(input, trusted))
}

/** The days of a standing campaign on the job as it is now; undefined where they do not carry over. */
export function heldDays(
  input: CampaignInput,
  log: SiteLog | undefined,
  standing: Campaign,
): PlannedDays | undefined {
  if (!log) {
    const campaign = holdDays(input, standing)
    return campaign && fromNothing(input, campaign)
  }
  const { trusted, findings } = trustedLog(input, log)
  const resumed = holdResumed(input, trusted, standing)
  return resumed && fromLog(input, trusted, findings, resumed)
}

const fromNothing = (input: CampaignInput, campaign: Campaign): PlannedDays => ({
  campaign,
  ahead: { input, campaign },
  findings: [],
})

function fromLog(
  input: CampaignInput,
  log: SiteLog,
  findings: readonly Finding[],
  { campaign, rest, built, stands, changes, kept }: ResumedCampaign,
): PlannedDays {
  const lost: readonly LostTime[] = lostTime(log.events, log.now)
  return {
    campaign,
    ahead: rest,
    soFar: { ...stands, changes, kept, lost },
    findings: [...findings, ...coldJoints(input, log.events, built)],
  }
}

/** The log as far as it can be planned from, and what is wrong with it. */
function trustedLog(input: CampaignInput, log: SiteLog) {
  const problems = checkLog(log.events, { ...input, sections: loggedSections(input) })
  return { trusted: problems.length > 0 ? { ...log, events: [] } : log, findings: problems.map(unusable) }
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
