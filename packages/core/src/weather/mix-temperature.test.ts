import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { summerSite } from './fixtures/summer-site.js'
import {
  batchTemperature,
  chilledWater,
  chillerPower,
  hoseRun,
  iceForTarget,
  iceShareMost,
  nozzleTemperature,
  outdoorFilm,
  sunOnCylinder,
  waterFlow,
  waterForTarget,
} from './index.js'

const supply = { batching: summerSite.batching, mix: summerSite.mix, flow: 1e-4 }
const noon = { dry: 32, air: 33, wind: 2, cylinderSun: 300 }

describe('batchTemperature', () => {
  // hand [ACI305-2010]: 1800 kg aggregate at 35 °C, 500 kg cement at 60, free water 40 kg at 35; 0.01 is the print.
  const batch = (water: readonly [number, number], ice: number) =>
    batchTemperature({ aggregate: [1800, 35], binder: [500, 60], water, moisture: [40, 35], ice })
  it.each([
    [180, 30, 0, 37.548],
    [180, 5, 0, 31.35],
    [100, 5, 80, 22.028],
  ])('with %d kg of water at %d °C and %d kg of ice is %d °C', (mass, temperature, ice, wanted) =>
    expect(Math.abs(batch([mass, temperature], ice) - wanted)).toBeLessThanOrEqual(0.01),
  )
  it('keeps the one temperature of all its parts', () =>
    // closed form: without ice nothing changes when all is equally warm.
    expect(
      batchTemperature({ aggregate: [7, 21], binder: [3, 21], water: [2, 21], moisture: [1, 21], ice: 0 }),
    ).toBeCloseTo(21, 12))
})

describe('nozzleTemperature', () => {
  it('is the batch plus its heats where there is no hose', () => {
    const bare = { ...supply, batching: { ...supply.batching, hoseLength: 0 } }
    // hand: (0.22·32 + 0.16·20)/(0.38) = 26.947; + 2 + 1.5.
    expect(nozzleTemperature(bare, noon, 20)).toBeCloseTo(26.947 + 3.5, 3)
  })
  it('agrees with the general batch formula, ice included', () => {
    const bare = { ...supply, batching: { ...supply.batching, hoseLength: 0, mixingHeat: 0, pumpHeat: 0 } }
    const general = batchTemperature({
      aggregate: [0.65, 32],
      binder: [0.35, 32],
      water: [0.12, 20],
      moisture: [0, 0],
      ice: 0.04,
    })
    expect(nozzleTemperature(bare, noon, 20, 0.25)).toBeCloseTo(general, 10)
  })
  it('tends to the hose’s own temperature when the flow dies', () => {
    const slow = { ...supply, flow: 1e-9 }
    expect(nozzleTemperature(slow, noon, 20)).toBeCloseTo(hoseRun(slow, noon).end, 6)
  })
  it('follows a hose cut into a thousand short ones', () => {
    // manufactured: the exponential of one run equals many small linear steps; first order, so 1/1000 of the change.
    const { end } = hoseRun(supply, noon)
    const short = hoseRun({ ...supply, batching: { ...supply.batching, hoseLength: 0.02 } }, noon)
    let temperature = 30
    for (let piece = 0; piece < 1000; piece += 1) temperature += (end - temperature) * (1 - short.kept)
    expect(temperature).toBeCloseTo(end + (30 - end) * hoseRun(supply, noon).kept, 6)
  })
  it('is warmer with the hose in the sun than in the shade', () => {
    const shaded = { ...supply, batching: { ...supply.batching, hoseInSun: false } }
    expect(nozzleTemperature(supply, noon, 20)).toBeGreaterThan(nozzleTemperature(shaded, noon, 20))
  })
})

describe('waterForTarget and iceForTarget', () => {
  it('give just the target when put back', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 15, max: 45, noNaN: true }),
        fc.double({ min: 0, max: 0.5, noNaN: true }),
        (target, ice) => {
          const water = waterForTarget(supply, noon, target, ice)
          expect(nozzleTemperature(supply, noon, water, ice)).toBeCloseTo(target, 9)
        },
      ),
    ))
  it('ask for no ice where the water alone does it', () => expect(iceForTarget(supply, noon, 45, 20)).toBe(0))
  it('ask for the ice that does it', () => {
    const target = nozzleTemperature(supply, noon, 20) - 4
    expect(nozzleTemperature(supply, noon, 20, iceForTarget(supply, noon, target, 20))).toBeCloseTo(target, 9)
  })
})

describe('chilledWater', () => {
  const withChiller = (rate: number) => ({
    ...supply,
    batching: { ...supply.batching, chiller: { temperature: 5, rate } },
  })
  it('is as cold as the chiller makes it while its rate suffices', () =>
    expect(chilledWater(withChiller(1))).toBe(5))
  it('is topped up from the tap beyond that', () => {
    // hand: half of the water at 5 °C, half at 20 °C.
    expect(chilledWater(withChiller(waterFlow(supply) / 2))).toBeCloseTo(12.5, 12)
  })
  it('is the tap’s without a chiller, and never warmer for having one', () => {
    expect(chilledWater(supply)).toBe(20)
    expect(
      chilledWater({
        ...supply,
        batching: { ...supply.batching, waterTemperature: 3, chiller: { temperature: 5, rate: 1 } },
      }),
    ).toBe(3)
  })
  it('needs the power that its water’s heat says', () => {
    // hand: 1e-4 m³/s · 2150 · 0.16/1.16 = 0.029655 kg/s; · 15 K · 4187 = 1862.5 W.
    expect(chillerPower(supply, 5)).toBeCloseTo(1862.5, 0)
    expect(chillerPower(supply, 25)).toBe(0)
  })
})

describe('outdoorFilm', () => {
  // hand [McAdams1954].
  it.each([
    [0, 5.7],
    [1, 9.5],
    [3, 17.1],
    [5, 24.7],
  ])('at %d m/s is %d W/m²K', (wind, film) => expect(outdoorFilm(wind)).toBeCloseTo(film, 9))
})

describe('iceShareMost', () => {
  it('is the ice of a bag over the water of a bag', () => {
    expect(iceShareMost({ ...summerSite.batching, icePerBatchMost: 1 }, summerSite.mix)).toBeCloseTo(0.25, 12)
    expect(iceShareMost({ ...summerSite.batching, icePerBatchMost: 9 }, summerSite.mix)).toBe(1)
  })
})

describe('sunOnCylinder', () => {
  it('is what a cylinder cut into a thousand strips takes in', () => {
    // manufactured: beam from straight above, sky over the upper half weighted (1 + cos)/2, ground below; midpoint sum to 1e-5.
    const sun = { global: 800, beam: 800, diffuse: 0 }
    let sum = 0
    for (let strip = 0; strip < 1000; strip += 1) {
      const turn = ((strip + 0.5) / 1000) * 2 * Math.PI
      sum += (800 * Math.max(0, Math.cos(turn)) + 0.2 * 800 * (1 - Math.cos(turn)) * 0.5) / 1000
    }
    expect(sunOnCylinder(sun)).toBeCloseTo(sum, 2)
  })
})
