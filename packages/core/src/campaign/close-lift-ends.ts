import type { Finding } from '../result/index.js'
import type { LiftEnd, SectionWork } from './campaign.js'
import type { CampaignInput } from './campaign-input.js'
import { scheduleCampaign } from './schedule-campaign.js'
import { calendarDays } from './work-day.js'

/** Lift ends of one section nearer to each other than this share of a lift by rule cost a day each for next to nothing. */
const CLOSE = 0.25

/**
 * The job with lift ends that lie close together moved to the highest of each group, their holds with them: lintels of one
 * depth, or seated at one height. For trying out; the lead has to change the openings.
 */
export function alignLiftEnds(input: CampaignInput): CampaignInput {
  return { ...input, work: input.work.map(work => alignWork(input, work)) }
}

function alignWork(input: CampaignInput, work: SectionWork): SectionWork {
  const goes = new Map(closeGroups(input, work).flatMap(group => group.map(layer => [layer, group.at(-1)!])))
  const moved = (layer: number) => goes.get(layer) ?? layer
  return {
    ...work,
    liftEnds: work.liftEnds.map(end => ({ ...end, afterLayer: moved(end.afterLayer) })),
    holds: work.holds.map(hold =>
      hold.reason === 'lintel' || hold.reason === 'pour'
        ? { ...hold, afterLayer: moved(hold.afterLayer) }
        : hold,
    ),
  }
}

/** Groups of different lift-end layers, each within reach of the group's lowest. */
function closeGroups(input: CampaignInput, work: SectionWork): readonly (readonly number[])[] {
  const reach = (CLOSE * input.rules.liftHeight.value) / work.layerHeight
  const layers = [...new Set(work.liftEnds.map(end => end.afterLayer))].sort((a, b) => a - b)
  const groups: number[][] = []
  for (const layer of layers) {
    const group = groups.at(-1)
    if (group && layer - group[0]! <= reach) group.push(layer)
    else groups.push([layer])
  }
  return groups.filter(group => group.length > 1)
}

/** Says what lintels and pours a few layers apart cost, both ways planned by the plain rule. */
export function closeLiftEndFindings(input: CampaignInput): readonly Finding[] {
  const close = input.work.flatMap(work => closeGroups(input, work).map(group => ({ work, group })))
  if (close.length === 0) return []
  const [asIs, aligned] = [scheduleCampaign(input, 'quick'), scheduleCampaign(alignLiftEnds(input), 'quick')]
  const [last, sooner] = [asIs.days.at(-1)?.date, aligned.days.at(-1)?.date]
  if (!asIs.finished || !aligned.finished || last === undefined || sooner === undefined) return []
  const gained = calendarDays(sooner, last)
  const printDays = asIs.days.length - aligned.days.length
  if (gained <= 0 && printDays <= 0) return []
  return [
    {
      check: 'campaign/close-lift-ends',
      at: close.map(({ work }) => work.section).join(', '),
      demand: asIs.days.length,
      capacity: aligned.days.length,
      unit: 'days',
      source: 'the job',
      verdict: 'warn',
      say: `Lifts end a few layers apart: ${close.map(({ work, group }) => sayGroup(work, group)).join('; ')}. At one height each, the walls take ${aligned.days.length} print days instead of ${asIs.days.length} and are up ${gained} ${gained === 1 ? 'day' : 'days'} sooner. Changing a lintel needs its engineer.`,
    },
  ]
}

const sayGroup = (work: SectionWork, group: readonly number[]): string =>
  `section ${work.section} ${group.map(layer => `after layer ${layer} (${refsAt(work.liftEnds, layer)})`).join(', ')}`

const refsAt = (ends: readonly LiftEnd[], layer: number): string =>
  ends
    .filter(end => end.afterLayer === layer)
    .map(end => end.ref)
    .join(', ')
