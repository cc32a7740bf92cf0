import { describe, expect, it } from 'vitest'
import type { Job, MakeUp } from '../job/index.js'
import { beadLengthPerMetre } from '../wall/index.js'
import { layerTimePerMetre } from './layer-time.js'

const print: Job['print'] = {
  beadWidth: 0.05,
  layerHeight: 0.02,
  cornerRadius: 0.03,
  overhang: 0.2,
  speed: 0.15,
}
const machine = (acceleration: number, headingRate = 0) =>
  ({ acceleration, headingRate, cornerDeviation: 0.001 }) as Job['machine']
const double: MakeUp = { kind: 'double', web: 'zigzag', webPitch: 0.4 }
const time = (makeUp: MakeUp, m?: Job['machine']) => layerTimePerMetre({ makeUp, thickness: 0.25 }, print, m)

describe('layerTimePerMetre', () => {
  it('is length over speed for a single bead', () =>
    expect(time({ kind: 'single' })).toBeCloseTo(1 / 0.15, 9))
  it('nears length over speed as acceleration grows without end', () =>
    expect(time(double, machine(1e6))).toBeCloseTo(
      beadLengthPerMetre({ makeUp: double, thickness: 0.25 }, print) / 0.15,
      3,
    ))
  it('falls as acceleration grows', () => {
    const times = [0.1, 0.2, 0.5, 2].map(acceleration => time(double, machine(acceleration)))
    expect(times).toEqual([...times].sort((a, b) => b - a))
    expect(times[0]! - times[3]!).toBeGreaterThan(1)
  })
  // Hand: wythes 2/0.15 = 13.333 s. A heading axis of 1 rad/s takes a turn of 0.03 m at 0.03 m/s. Bead of the make-up L a
  // metre, web w = L − 2 in 5 legs of ℓ = w/5. At 0.1 m/s² the peak is min(0.15, √(0.0009 + 0.1ℓ)) = 0.15 for ℓ > 0.216:
  // 2·(0.15 − 0.03)/0.1 = 2.4 s over 0.216 m, the rest at 0.15 m/s.
  it('slows for every turn of the heading axis', () => {
    const leg = (beadLengthPerMetre({ makeUp: double, thickness: 0.25 }, print) - 2) / 5
    expect(leg).toBeGreaterThan(0.216)
    expect(time(double, machine(0.1, 1))).toBeCloseTo(13.3333 + 5 * (2.4 + (leg - 0.216) / 0.15), 3)
  })
})
