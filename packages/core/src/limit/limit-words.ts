import { clockText } from '../clock/index.js'
import { isBeyond } from './beyond.js'
import type { Limit, LimitKind } from './limit.js'

export type Units = 'metric' | 'imperial'

/** A number with the unit people on that site read; with `more` digits where two numbers would else read the same. */
type Shown = (value: number, more?: number) => string

const fixed = (digits: number, unit: string, factor = 1): Shown => {
  return (value, more = 0) => `${(value * factor).toFixed(digits + more)} ${unit}`
}
/** A tenth where there is one: `40 mm`, `2.5 mm`. */
const tenths = (unit: string, factor = 1): Shown => {
  return (value, more = 0) => `${Number((value * factor).toFixed(1 + more))} ${unit}`
}
const feetAndInches: Shown = (value, more = 0) => {
  const parts = 8 * 2 ** more
  const counted = Math.round(Math.abs(value) * 39.37007874 * parts)
  const feet = Math.floor(counted / (12 * parts))
  const inches = ((counted % (12 * parts)) / parts).toString()
  return `${value < 0 ? '-' : ''}${feet}' ${inches}"`
}
const fahrenheit: Shown = (value, more = 0) => `${(value * 1.8 + 32).toFixed(more)} °F`
const spell: Shown = (value, more = 0) =>
  value < 5400 ? `${(value / 60).toFixed(more)} min` : `${(value / 3600).toFixed(1 + more)} h`

/** SI unit of a limit → how it is shown: metric, imperial. */
const shown: Readonly<Record<string, readonly [Shown, Shown]>> = {
  m: [fixed(2, 'm'), feetAndInches],
  s: [spell, spell],
  h: [fixed(1, 'h'), fixed(1, 'h')],
  'm/s': [fixed(0, 'km/h', 3.6), fixed(0, 'mph', 2.236936)],
  'mm/s': [fixed(0, 'mm/s'), fixed(1, 'in/s', 1 / 25.4)],
  '°C': [tenths('°C'), fahrenheit],
  K: [fixed(1, 'K'), fixed(0, '°F', 1.8)],
  'kg/m²h': [fixed(2, 'kg/m²h'), fixed(2, 'lb/ft²h', 0.204816)],
  'mm/h': [fixed(1, 'mm/h'), fixed(2, 'in/h', 1 / 25.4)],
  Pa: [fixed(1, 'kPa', 0.001), fixed(2, 'psi', 1.450377e-4)],
  // The same as Pa, but a load on a face, such as wind, and not a stress.
  bar: [fixed(1, 'bar'), fixed(0, 'psi', 14.50377)],
  'N/m²': [fixed(0, 'Pa'), fixed(1, 'lb/ft²', 0.02088543)],
  MPa: [fixed(1, 'MPa'), fixed(0, 'psi', 145.0377)],
  'mm²': [fixed(0, 'mm²'), fixed(1, 'in²', 1 / 645.16)],
  'cm²': [fixed(0, 'cm²'), fixed(0, 'in²', 1 / 6.4516)],
  'm²': [fixed(1, 'm²'), fixed(0, 'ft²', 10.76391)],
  'm³': [fixed(2, 'm³'), fixed(2, 'yd³', 1.307951)],
  mm: [tenths('mm'), fixed(2, 'in', 1 / 25.4)],
  km: [tenths('km'), tenths('mi', 0.6213712)],
  kg: [fixed(0, 'kg'), fixed(0, 'lb', 2.204623)],
  'kg/m³': [fixed(0, 'kg/m³'), fixed(1, 'lb/ft³', 0.06242796)],
  L: [fixed(0, 'L'), fixed(0, 'gal', 0.2641721)],
  'L/min': [fixed(1, 'L/min'), fixed(1, 'gal/min', 0.2641721)],
  '°': [fixed(1, '°'), fixed(1, '°')],
}

/** A quantity as people on the site read it, e.g. `32 °C`, `40 km/h`, `3' 3.375"`. An unknown unit is shown as it is. */
export function sayQuantity(value: number, unit: string, units: Units): string {
  const pair = shown[unit]
  if (!pair) return `${Number(value.toPrecision(3))} ${unit}`.trim()
  return pair[units === 'metric' ? 0 : 1](value)
}

/** Digits more than usual that are tried to tell two numbers apart. */
const mostDigits = 2

/** Two quantities that differ, with as many digits as it takes to see that they do: `11.4 min` and `11.2 min`. */
function sayApart(one: number, other: number, unit: string, units: Units): readonly [string, string] {
  const pair = shown[unit]
  const plain = [sayQuantity(one, unit, units), sayQuantity(other, unit, units)] as const
  if (!pair || one === other || plain[0] !== plain[1]) return plain
  const show = pair[units === 'metric' ? 0 : 1]
  for (let more = 1; more <= mostDigits; more++) {
    const finer = [show(one, more), show(other, more)] as const
    if (finer[0] !== finer[1]) return finer
  }
  return plain
}

type Sentence = (demand: string, capacity: string, beyond: boolean) => string

/** `{demand}` and `{capacity}` already carry their unit. The one place where limits get their words. */
const sentences: Readonly<Record<LimitKind, Sentence>> = {
  'lift-height': (_, most) => `a lift may be ${most} tall by rule`,
  'lintel-head': () => 'the lift ends here so that the lintel can be set',
  'pour-level': () => 'the lift ends here for the pour',
  'top-of-wall': () => 'the wall is up',
  'first-layer': (load, bears) => `the first layer would flow: ${load} on it, ${bears} allowed`,
  collapse: (load, bears) => `the fresh wall would squash: ${load} where ${bears} is safe`,
  buckling: (tall, safe) => `the fresh wall would lean over: ${tall} tall, ${safe} is safe`,
  'resting-time': (rests, most) => `a layer would lie bare for ${rests}, bond allows ${most}`,
  'mix-hot': (_, most, beyond) => `mix ${beyond ? 'passes' : 'stays within'} ${most}`,
  'mix-cold': (least, mix, beyond) =>
    `mix ${beyond ? `at ${mix}, at least ${least} is needed` : `stays above ${least}`}`,
  'air-cold': (least, air, beyond) =>
    `air at ${air}${beyond ? `, ${least} is the least` : ` (least ${least})`}`,
  evaporation: (dries, most, beyond) =>
    `wall ${beyond ? 'dries too fast' : 'dries slowly enough'}: ${dries}, limit ${most}`,
  wind: (blows, most) => `wind ${blows}, limit ${most}`,
  gust: (blows, most) => `gusts of ${blows}, limit ${most}`,
  rain: (falls, most) => `rain ${falls}, limit ${most}`,
  'crew-heat': (heat, most) => `heat on the crew ${heat} WBGT, limit ${most}`,
  daylight: (_, __, beyond) => (beyond ? 'too dark to print' : 'light enough'),
  'permitted-hours': () => 'printing is not permitted at this hour',
  shift: (needs, has) => `the shift ends: ${needs} asked, ${has} to be had`,
  'overnight-cure': (needs, has) => `the lift below has cured ${has}, ${needs} is needed`,
  delivery: (needs, has) => `the silo runs empty: ${needs} asked, ${has} on site`,
  'broken-off': () => 'it was broken off here',
}

/** One limit as the crew reads it: `mix passes 32 °C at 09:40`. */
export function sayLimit(limit: Limit, units: Units, zone: string): string {
  // A day off is a shift of nobody.
  if (limit.kind === 'shift' && limit.unit === 'crew') return 'nobody works this day'
  const [demand, capacity] = sayApart(limit.demand, limit.capacity, limit.unit, units)
  const words = sentences[limit.kind](demand, capacity, isBeyond(limit))
  return limit.at === undefined ? words : `${words} at ${clockText(limit.at, zone)}`
}
