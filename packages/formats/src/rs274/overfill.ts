import { type Machine, pumpFlow } from '@dawnlift/core/machine'
import type { FeedMove, MachineRun, RunStep } from './machine-run.js'

/** Concrete laid too much because the pump keeps its setting while the nozzle brakes. */
export interface Overfill {
  /** In the whole file [m³]. */
  readonly volume: number
  /** Of what the setting and feed words ask for. */
  readonly share: number
  /** Where most lies: the joint of two pieces, with half of what each of them has too much. */
  readonly worst: { readonly line: number; readonly x: number; readonly y: number; readonly volume: number }
}

/**
 * Over-fill of a file on a machine.
 *
 *   V = Σ Q·(T − L/v)
 *
 * over all pieces run with the pump on: Q the flow of the S word in force, T the time of the piece with the machine's
 * accelerations, L/v its time under the feed word.
 *
 * @param run      the file
 * @param times    T of every step [s], `stepTimes`
 * @param machine  its pump
 *
 * Source   closed form: conservation of volume.
 * Range    files whose S words tell the flow; none: undefined.
 * Assumes  the pump does not follow the nozzle within a piece. With lags of tenths of a second it cannot: braking for a
 *          corner is over sooner.
 */
export function overfillOf(
  run: MachineRun,
  times: readonly number[],
  machine: Machine,
): Overfill | undefined {
  let [volume, asked] = [0, 0]
  let worst: Overfill['worst'] | undefined
  let before = 0
  run.steps.forEach((step, i) => {
    if (!isPumped(step)) {
      if (step.kind === 'rapid') before = 0
      return
    }
    const flow = pumpFlow(machine, step.setting)
    const more = flow * Math.max(0, times[i]! - step.time)
    volume += more
    asked += flow * step.time
    const joint = (before + more) / 2
    if (!worst || joint > worst.volume)
      worst = { line: step.line, x: step.from.x ?? 0, y: step.from.y ?? 0, volume: joint }
    before = more
  })
  return worst ? { volume, share: volume / asked, worst } : undefined
}

type PumpedMove = FeedMove & { readonly setting: number }

const isPumped = (step: RunStep): step is PumpedMove =>
  (step.kind === 'line' || step.kind === 'arc') &&
  step.pump &&
  step.setting !== undefined &&
  step.directions !== undefined
