import { describe, expect, it } from 'vitest'
import { dryInland, summerSite } from './fixtures/summer-site.js'
import {
  coolingNeed,
  hoursFromNormals,
  nozzleTemperature,
  type PrintHour,
  printHours,
  supplyOf,
  waterFlow,
} from './index.js'

const hot = { ...summerSite, batching: { ...summerSite.batching, siloGain: 12 } }
const day = hoursFromNormals(dryInland, summerSite.site, '2026-07-14', 1)
const need = (batching: Partial<typeof hot.batching>) => {
  const conditions = { ...hot, batching: { ...hot.batching, ...batching } }
  return coolingNeed(conditions, printHours(conditions, day))
}

describe('coolingNeed', () => {
  it('sets the water that the hour needs and no colder', () => {
    const hours = printHours(hot, day)
    const cooled = need({ chiller: { temperature: 3, rate: 1 } })
    cooled.hours.forEach((hour, index) => {
      expect(hour.water).toBeCloseTo(Math.min(20, hours[index]!.waterNeeded!), 9)
      expect(hour.iceShare).toBe(0)
      expect(hour.met).toBe(true)
    })
    expect(cooled).not.toHaveProperty('unmetFrom')
  })
  it('sizes the chiller by its warmest hour', () => {
    const cooled = need({})
    const coldest = Math.min(...printHours(hot, day).map(hour => hour.waterNeeded!))
    // hand: kg/s · K · 4187 J/kgK.
    expect(cooled.chillerPower).toBeCloseTo(cooled.waterFlow * (20 - coldest) * 4187, 6)
    expect(cooled.waterFlow).toBeCloseTo(waterFlow(supplyOf(hot)), 12)
  })
  it('asks for the ice that puts the mix on its limit', () => {
    const cooled = need({ icePerBatchMost: 4 })
    const worst = cooled.hours.reduce((a, b) => (b.iceShare > a.iceShare ? b : a))
    expect(worst.iceShare).toBeGreaterThan(0)
    // independent: the nozzle formula with that ice, in an hour made to need the same water.
    const supply = supplyOf(hot)
    const around = { dry: 40, air: 35, wind: 1, cylinderSun: 300 }
    const withIce = nozzleTemperature(supply, around, worst.water, worst.iceShare)
    const needed = worst.water - worst.iceShare * (worst.water + 79.6)
    expect(withIce).toBeCloseTo(nozzleTemperature(supply, around, needed), 9)
  })
  it('says from which hour the job’s means no longer reach', () => {
    const hours = printHours(hot, day)
    const first = hours.find(hour => hour.mixTemperature > 32)
    expect(first).toBeDefined()
    expect(need({}).unmetFrom).toBe(first!.start)
  })
  it('needs nothing in the cool', () => {
    const cool = hours(5)
    expect(coolingNeed(summerSite, cool)).toMatchObject({ chillerPower: 0, icePerHour: 0 })
  })
})

function hours(air: number): readonly PrintHour[] {
  return printHours(
    summerSite,
    day.map(hour => ({ ...hour, air })),
  )
}
