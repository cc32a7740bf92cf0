import type { Lift } from '@dawnlift/core/campaign'
import type { PaperPoint } from '../paper/index.js'

/**
 * A lift climbing over time, level during its holds. Every layer's end would be more than paper shows: about twenty
 * points and two at each hold. `at` takes a moment and layers gained since the lift's foot.
 */
export function risingLine(lift: Lift, at: (moment: number, layers: number) => PaperPoint): PaperPoint[] {
  const each = Math.max(1, Math.floor(lift.layerEnds.length / 20))
  const steps = lift.layerEnds.flatMap((end, index) => {
    const held = lift.holds
      .filter(hold => hold.afterLayer === lift.firstLayer + index)
      .reduce((sum, hold) => sum + hold.duration, 0)
    const last = index === lift.layerEnds.length - 1
    if (!last && held === 0 && index % each !== 0) return []
    const down = at(end, index + 1)
    return held > 0 && !last ? [down, at(end + held, index + 1)] : [down]
  })
  return [at(lift.start, 0), ...steps]
}

/** Distance of height lines [m]: some five to ten of them, at whole numbers of what the reader measures in. */
export function heightStep(top: number, units: 'metric' | 'imperial'): number {
  const steps =
    units === 'metric' ? [0.05, 0.1, 0.25, 0.5, 1, 2, 5] : [0.0762, 0.1524, 0.3048, 0.6096, 1.524, 3.048]
  return steps.find(step => top / step <= 10) ?? steps.at(-1)!
}
