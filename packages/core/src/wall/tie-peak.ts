import type { Metres } from '../quantity/index.js'
import type { Run } from './free-run.js'

/** Where a tie touches a wythe: station along the centreline, and on which side, left +1. */
export interface Peak {
  readonly station: Metres
  readonly side: 1 | -1
}

/** Half pitches that fit the run: whole, as near the wanted pitch as may be. */
export const halfPitches = (run: Metres, pitch: Metres): number => Math.max(1, Math.round(run / (pitch / 2)))

/** The peaks of a run with nothing in it: evenly spaced from end to end, right and left in turn. */
export function runPeaks({ from, to }: Run, pitch: Metres): readonly Peak[] {
  const count = halfPitches(to - from, pitch)
  return Array.from({ length: count + 1 }, (_, k) => ({
    station: k === count ? to : from + ((to - from) * k) / count,
    side: k % 2 === 0 ? -1 : 1,
  }))
}

/**
 * The peaks of a part of a run: those of the whole run that lie well inside it, so that ties stand on the ties of the
 * layers below whatever openings begin or end there, and one at each end, across from its neighbour.
 */
export function partPeaks(peaks: readonly Peak[], part: Run): readonly Peak[] {
  const half = peaks.length > 1 ? peaks[1]!.station - peaks[0]!.station : 0
  const inner = peaks.filter(
    ({ station }) => station > part.from + 0.45 * half && station < part.to - 0.45 * half,
  )
  const [first, last] = [inner[0], inner.at(-1)]
  if (!first || !last) return [peakAt(part.from, -1), peakAt(part.to, 1)]
  return [peakAt(part.from, first.side > 0 ? -1 : 1), ...inner, peakAt(part.to, last.side > 0 ? -1 : 1)]
}

const peakAt = (station: Metres, side: 1 | -1): Peak => ({ station, side })
