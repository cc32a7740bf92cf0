import type { Instant, Seconds } from '../quantity/index.js'
import type { CureCase } from './cure-case.js'
import type { CureStep } from './cure-steps.js'
import { type CureWords, cureWords } from './cure-words.js'
import type { WallHeat } from './wall-trace.js'
import { shortestRound, type Wetting, wettingRounds } from './wetting.js'

const practice = 'common practice, no source'

/** Rounds are told one by one through the night and the next day; after that by the day, for the plan will be made anew. */
const TOLD_SINGLY: Seconds = 36 * 3600

/** When to wet a lift's cloth, until it is uncovered. */
export function wettingSteps(
  { lift, area, job }: CureCase,
  heat: WallHeat,
  until: Instant,
): readonly CureStep[] {
  const words = cureWords(job.units)
  const rounds = wettingRounds(heat, area, heat.start, until)
  const near = rounds.filter(round => round.at < heat.start + TOLD_SINGLY)
  const far = rounds.slice(near.length)
  const blocks = [...new Set(far.map(round => dayOfCure(heat, round)))]
  return [
    ...near.map((round, index) => singleRound(lift.id, round, index, near, words)),
    ...blocks.map(day =>
      dayOfRounds(
        lift.id,
        day,
        far.filter(round => dayOfCure(heat, round) === day),
        words,
      ),
    ),
  ]
}

/** Number of the 24 hours since the lift, the first being 1. */
const dayOfCure = (heat: WallHeat, round: Wetting): number => Math.floor((round.at - heat.start) / 86400) + 1

function singleRound(
  id: string,
  { at, litres }: Wetting,
  index: number,
  near: readonly Wetting[],
  words: CureWords,
): CureStep {
  const shortest = shortestRound(near)
  const dense = index === 0 && shortest !== undefined && shortest < 2 * 3600
  const hose = dense ? '; rounds come less than two hours apart: lay a soaker hose on top' : ''
  const say = `Wet the burlap with ${words.water(litres)} from the top until it drips${hose}.`
  return { id: `${id}-wet-${index + 1}`, at, do: 'wet', litres, say, source: practice }
}

function dayOfRounds(id: string, day: number, rounds: readonly Wetting[], words: CureWords): CureStep {
  const litres = rounds.reduce((sum, round) => sum + round.litres, 0)
  const count = rounds.length === 1 ? 'one round' : `${rounds.length} rounds`
  const say = `Day ${day} of the cure: ${count} of wetting, ${words.water(litres)} in all; the times follow when the day is planned again.`
  const [first, last] = [rounds[0]!, rounds.at(-1)!]
  return {
    id: `${id}-wet-day-${day}`,
    at: first.at,
    until: last.at,
    do: 'wet',
    litres,
    say,
    source: practice,
  }
}
