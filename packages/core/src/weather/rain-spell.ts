import { addDays, instantAt } from '../clock/index.js'
import type { Instant } from '../quantity/index.js'
import type { DayNormals } from './day-normals.js'

/** One stretch of rain. */
export interface RainSpell {
  readonly date: string
  readonly start: Instant
  readonly end: Instant
  readonly mmPerHour: number
}

const GOLDEN = 0.6180339887498949

/**
 * Wet days as many as expected, evenly spread, the same for every call: a day is wet when the running sum of the days'
 * chances, counted from new year and begun at a half, passes a whole number.
 */
export function spellsByExpectation(
  byDay: (date: string) => DayNormals,
  from: string,
  days: number,
  zone: string,
): readonly RainSpell[] {
  const until = addDays(from, days)
  const spells: RainSpell[] = []
  let sum = 0.5
  let count = 0
  // From new year, whatever day planning begins: the same date stays wet when the campaign moves.
  for (let date = `${from.slice(0, 4)}-01-01`; date < until; date = addDays(date, 1)) {
    const day = byDay(date)
    sum += day.wetChance
    if (sum < 1) continue
    sum -= 1
    count += 1
    if (date >= from) spells.push(spell(date, (count * GOLDEN) % 1, day.wetDayMm, zone))
  }
  return spells
}

/** Wet days by a two-state chain with the day's chance as its mean; amounts exponential. */
export function spellsByChance(
  byDay: (date: string) => DayNormals,
  from: string,
  days: number,
  zone: string,
  random: () => number,
  wetMemory: number,
): readonly RainSpell[] {
  const spells: RainSpell[] = []
  let wet: boolean = false
  for (let index = 0; index < days; index += 1) {
    const date = addDays(from, index)
    const day = byDay(date)
    const afterWet = Math.min(0.95, day.wetChance * wetMemory)
    // Chance after a dry day such that the long mean stays the day's chance.
    const afterDry = Math.min(0.95, (day.wetChance * (1 - afterWet)) / Math.max(0.05, 1 - day.wetChance))
    const chance: number = index === 0 ? day.wetChance : wet ? afterWet : afterDry
    wet = random() < chance
    const moment = random()
    const amount = -Math.log(1 - random()) * day.wetDayMm
    if (wet) spells.push(spell(date, moment, amount, zone))
  }
  return spells
}

/** Rain of one hour [mm]. */
export function rainInHour(spells: readonly RainSpell[], start: Instant): number {
  let sum = 0
  for (const { start: from, end, mmPerHour } of spells) {
    const overlap = Math.min(end, start + 3600) - Math.max(from, start)
    if (overlap > 0) sum += (mmPerHour * overlap) / 3600
  }
  return sum
}

/** 1.5 mm/h and at least two hours: common practice, no source. Whole hours, within the day. */
function spell(date: string, moment: number, millimetres: number, zone: string): RainSpell {
  const hours = Math.max(2, Math.min(12, Math.round(millimetres / 1.5)))
  const start = instantAt(date, Math.floor(moment * (24 - hours + 1)) * 3600, zone)
  return { date, start, end: start + hours * 3600, mmPerHour: millimetres / hours }
}
