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
    expect(times[0]! - times[3]!).toBeGreaterThan(0.5)
  })
  // Hand: wythes 2/0.15 = 13.333 s. The tie swings 60 mm to each side over half pitches of 0.2 m and leaves 50 mm of a leg
  // straight: it turns on (0.2² + 4·0.06² − 0.05²)/(8·0.06) = 0.108125 m, a heading axis of 1 rad/s at 0.108125 m/s. Bead of
  // the make-up L a metre, web w = L − 2 in 5 legs of ℓ = w/5. At 0.5 m/s² each leg gains and loses speed in
  // 2·(0.15 − 0.108125)/0.5 = 0.1675 s over (0.15² − 0.108125²)/0.5 = 0.021618 m, the rest is run at 0.15 m/s.
  it('slows for every turn of the heading axis', () => {
    const leg = (beadLengthPerMetre({ makeUp: double, thickness: 0.25 }, print) - 2) / 5
    expect(time(double, machine(0.5, 1))).toBeCloseTo(13.3333 + 5 * (0.1675 + (leg - 0.021618) / 0.15), 3)
  })
})
