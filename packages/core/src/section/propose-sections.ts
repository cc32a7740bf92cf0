import type { Finding, Problem } from '../result/index.js'
import { emptySections } from './check-sections.js'
import { manualProposal } from './manual-proposal.js'
import { checkManual } from './manual-sections.js'
import { type PartitionAims, partTimes } from './partition.js'
import { bestOfAll, bestOfMany, EXHAUSTIVE_TIES } from './partition-search.js'
import type { Section } from './section.js'
import { sectionGraph } from './section-graph.js'
import type { SectionJob, SectionOptions } from './section-job.js'
import { proposalOf, type SectionProposal } from './section-proposal.js'

/** The division to plan with, other ones worth a try, and what is wrong with either. */
export interface Division {
  readonly sections: readonly Section[]
  readonly proposals: readonly SectionProposal[]
  readonly findings: readonly Finding[]
  readonly problems: readonly Problem[]
}

/**
 * Divides a plan into sections. Sections set by hand are honoured if they cover the plan; otherwise their problems are
 * told and the plan is divided automatically, so that the rest of the pipeline still has something true to show.
 */
export function proposeSections(job: SectionJob, options: SectionOptions = {}): Division {
  const unsound = checkManual(job)
  const problems = unsound.length > 0 ? unsound : emptySections(job)
  const proposals = automaticProposals(job, options)
  const manual =
    job.sections.length > 0 && problems.length === 0
      ? manualProposal(job, options, aimsOf(job, options))
      : undefined
  const ranked = manual ? [manual, ...proposals] : proposals
  const chosen = ranked[0]
  return {
    sections: chosen?.sections ?? [],
    proposals: ranked,
    findings: [...problems.map(problemFinding), ...(chosen ? checkDivision(job, options, chosen) : [])],
    problems,
  }
}

/** The best division, and the best ones with one and with two sections more. */
function automaticProposals(job: SectionJob, options: SectionOptions): readonly SectionProposal[] {
  if (job.walls.length === 0) return []
  const graph = sectionGraph(job, options)
  const aims = aimsOf(job, options)
  const isProven = graph.ties.length <= EXHAUSTIVE_TIES
  const search = isProven ? bestOfAll : bestOfMany
  const best = search(graph, aims)
  const count = partTimes(graph, best).length
  const more = [count + 1, count + 2].map(sectionsLeast => search(graph, { ...aims, sectionsLeast }))
  const distinct = [best, ...more].filter(
    (partition, i, all) => !all.slice(0, i).some(other => other.join() === partition.join()),
  )
  return distinct.map(partition => proposalOf(graph, partition, aims, isProven))
}

const aimsOf = (job: SectionJob, options: SectionOptions): PartitionAims => ({
  most: job.rules.layerTimeMost.value,
  least: options.layerTimeLeast ?? 0,
  ...(options.startTime === undefined ? {} : { startTime: options.startTime }),
  ...(options.sectionsLeast === undefined ? {} : { sectionsLeast: options.sectionsLeast }),
})

const problemFinding = (problem: Problem): Finding => ({
  check: problem.code,
  at: problem.at,
  demand: 1,
  capacity: 0,
  unit: '',
  source: 'the job',
  verdict: 'fail',
  say: problem.say,
})

/** Layer times outside what bond and standing want. */
function checkDivision(
  job: SectionJob,
  options: SectionOptions,
  proposal: SectionProposal,
): readonly Finding[] {
  const { value: most, source } = job.rules.layerTimeMost
  const least = options.layerTimeLeast ?? 0
  const minutes = (seconds: number) => (seconds / 60).toFixed(1)
  return proposal.sections.flatMap((section, i): readonly Finding[] => {
    const time = proposal.layerTimes[i]!
    const base = { check: 'section/layer-time', at: section.id, unit: 's', verdict: 'warn' as const }
    if (time > most + 0.1) {
      const say = `A layer of section ${section.id} takes about ${minutes(time)} min; ${minutes(most)} min is the most. Allow another cut, or print faster.`
      return [{ ...base, demand: time, capacity: most, source, say }]
    }
    if (time < least - 0.1) {
      const say = `A layer of section ${section.id} takes about ${minutes(time)} min; standing wants ${minutes(least)} min. Join it with another section, or print slower.`
      return [{ ...base, demand: least, capacity: time, source: 'the job', say }]
    }
    return []
  })
}
