import { clockText, localTime } from '@dawnlift/core/clock'
import type { CureStep } from '@dawnlift/core/cure'
import type { Job } from '@dawnlift/core/job'

/** The steps of all cure plans that fall on a date of the site's calendar, in time order. */
const stepsOn = (steps: readonly CureStep[], date: string, zone: string): readonly CureStep[] =>
  steps
    .filter(step => localTime(step.at, zone).date === date)
    .sort((a, b) => a.at - b.at || (a.id < b.id ? -1 : 1))

/** A line a step; the wetting rounds of one lift share a line, or a hot day would be nothing else. */
export function cureLines(job: Job, steps: readonly CureStep[], date: string): readonly string[] {
  const zone = job.site.timeZone
  const today = stepsOn(steps, date, zone)
  const lines = today
    .filter(step => !isRound(step))
    .map(step => `${spanText(step, zone)} ${liftOf(step)}: ${step.say}`)
  const lifts = [...new Set(today.filter(isRound).map(liftOf))]
  return [...lifts.map(lift => wetLine(job, lift, today)), ...lines]
}

/** Ids are lift, what, running number. */
const liftOf = (step: CureStep): string => step.id.split('-')[0] ?? step.id

/** One round with the hose; those of a later day are told as one step. */
const isRound = (step: CureStep): boolean => step.do === 'wet' && step.until === undefined

const spanText = ({ at, until }: CureStep, zone: string): string =>
  until === undefined || until === at
    ? clockText(at, zone)
    : `${clockText(at, zone)}–${clockText(until, zone)}`

function wetLine(job: Job, lift: string, today: readonly CureStep[]): string {
  const rounds = today.filter(step => isRound(step) && liftOf(step) === lift)
  const times = rounds.map(step => clockText(step.at, job.site.timeZone)).join(', ')
  const most = Math.max(...rounds.map(step => step.litres ?? 0))
  if (most === 0) return `Wet ${lift} at ${times}.`
  const water = job.units === 'metric' ? `${Math.ceil(most)} L` : `${(most * 0.264172).toFixed(1)} gal`
  return `Wet ${lift} at ${times}; up to ${water} a round.`
}
