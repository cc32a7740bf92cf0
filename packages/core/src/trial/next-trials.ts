import { type Machine, pumpSetting } from '../machine/index.js'
import type { BeadTrial } from './bead-trial.js'
import type { CornerTrial } from './corner-trial.js'
import type { LagTrial } from './lag-trial.js'
import type { PumpTrial } from './pump-trial.js'

export interface TrialsSoFar {
  readonly pump: readonly PumpTrial[]
  readonly bead: readonly BeadTrial[]
  readonly lag: readonly LagTrial[]
  readonly corner: readonly CornerTrial[]
}

/** One trial worth running, with its setting and what it is for. */
export interface NextTrial {
  readonly kind: 'pump' | 'bead' | 'start' | 'stop' | 'corner'
  readonly setting: number
  readonly unit: 'S' | 'm/s'
  readonly why: string
}

/** What is enough for each model: settings tried, and repeats that show the scatter. */
const ENOUGH = { pump: 6, bead: 5, lag: 3, corner: 3 } as const

/**
 * The few trials that would teach most, in the order to run them; none when everything is known well enough.
 * For the pump the settings are chosen one by one so that the worst-known flow in its range becomes best known
 * (greatest variance of a straight line: the ends first, then the middle as a check of straightness).
 *
 * Source   G-optimal design of a straight line, closed form.
 * Range    the settings that belong to the machine's flows.
 * Assumes  scatter in proportion to the flow.
 */
export function nextTrials(machine: Machine, done: TrialsSoFar): NextTrial[] {
  return [
    ...pumpTrials(machine, done.pump),
    ...beadTrials(machine, done.bead),
    ...lagTrials(machine, done.lag),
    ...cornerTrials(machine, done.corner),
  ]
}

function pumpTrials(machine: Machine, done: readonly PumpTrial[]): NextTrial[] {
  const { flowLeast, flowMost } = machine.pump
  const ends = [flowLeast, flowMost].map(flow => pumpSetting(machine, flow)) as [number, number]
  const candidates = [0, 0.25, 0.5, 0.75, 1].map(share => ends[0] + share * (ends[1] - ends[0]))
  const settings = done.map(({ setting }) => setting)
  const next: NextTrial[] = []
  while (settings.length < ENOUGH.pump) {
    const setting = worstKnown(candidates, settings)
    const repeats = settings.filter(each => Math.abs(each - setting) < 1e-9 * setting).length
    next.push({
      kind: 'pump',
      setting,
      unit: 'S',
      why: repeats > 0 ? 'repeat: shows how far one bucket can be trusted' : 'the flow least known so far',
    })
    settings.push(setting)
  }
  return next
}

/** The candidate with the greatest variance of a straight line through what was tried; nothing tried: the far end. */
function worstKnown(candidates: readonly number[], tried: readonly number[]): number {
  const middle = tried.reduce((sum, setting) => sum + setting, 0) / Math.max(1, tried.length)
  const spread = tried.reduce((sum, setting) => sum + (setting - middle) ** 2, 0)
  const doubt = (setting: number) => {
    const near = tried.filter(each => Math.abs(each - setting) < 1e-9 * setting).length
    const distance = (setting - middle) ** 2
    return spread > 0 ? 1 / tried.length + distance / spread - near * 1e-6 : distance
  }
  return candidates.reduce((worst, next) => (doubt(next) > doubt(worst) ? next : worst))
}

function beadTrials(machine: Machine, done: readonly BeadTrial[]): NextTrial[] {
  const wanted = [1, 0.5, 0.75, 1, 0.5].map(share => share * machine.printSpeedMost)
  return wanted.slice(done.length, ENOUGH.bead).map(setting => ({
    kind: 'bead',
    setting,
    unit: 'm/s',
    why: 'measure width and height where the bead has come to rest',
  }))
}

function lagTrials(machine: Machine, done: readonly LagTrial[]): NextTrial[] {
  return (['start', 'stop'] as const).flatMap(kind => {
    const missing = ENOUGH.lag - done.filter(trial => trial.kind === kind).length
    return Array.from({ length: Math.max(0, missing) }, () => ({
      kind,
      setting: machine.printSpeedMost,
      unit: 'm/s' as const,
      why: kind === 'start' ? 'measure the bare length' : 'measure the tail',
    }))
  })
}

function cornerTrials(machine: Machine, done: readonly CornerTrial[]): NextTrial[] {
  const wanted = [0.5, 0.25, 0.75].map(share => share * machine.printSpeedMost)
  return wanted.slice(done.length, ENOUGH.corner).map(setting => ({
    kind: 'corner',
    setting,
    unit: 'm/s',
    why: 'measure the width in the corner and a hand before it',
  }))
}
