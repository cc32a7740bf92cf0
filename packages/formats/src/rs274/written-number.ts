import type { Machine } from '@dawnlift/core/machine'
import { assert } from '@dawnlift/core/result'
import type { ByteText } from './byte-text.js'

/** How lengths are written: file units per metre, and the finest step. Places in a file are counted in its steps. */
export interface WrittenUnits {
  readonly perMetre: number
  /** 0.0001 mm or 0.00001 in: twenty times finer than the standard's tolerance on arcs. */
  readonly places: number
  readonly stepsPerUnit: number
}

export const writtenUnits = (machine: Machine): WrittenUnits =>
  machine.words.units === 'G21'
    ? { perMetre: 1000, places: 4, stepsPerUnit: 1e4 }
    : { perMetre: 1 / 0.0254, places: 5, stepsPerUnit: 1e5 }

/** A length as steps of the grid that is written. */
export const onGrid = (metres: number, units: WrittenUnits): number =>
  Math.round(metres * units.perMetre * units.stepsPerUnit)

/** Headings are written to a millionth of a degree. */
export const headingPlaces = 6
export const headingOnGrid = (radians: number): number => Math.round((radians * 180e6) / Math.PI)
export const degreesOf = (heading: number): number => heading / 1e6

/** Feeds are written to a thousandth, rounded down so that no limit is passed by rounding. */
export const feedPlaces = 3
export const feedOnGrid = (unitsPerMinute: number): number => Math.floor(unitsPerMinute * 1000)
export const perMinuteOf = (feed: number): number => feed / 1000

/** The words of a place: `X1200.5 Y80`. */
export const putPlace = (text: ByteText, x: number, y: number, { places }: WrittenUnits): ByteText =>
  text.words('X').decimal(x, places).words(' Y').decimal(y, places)

/** Plain decimal text: RS-274 has no exponents. */
export function plain(value: number): string {
  assert(Number.isFinite(value), 'numbers in a machine file are finite')
  const text = String(value === 0 ? 0 : value)
  return text.includes('e') ? value.toFixed(12).replace(/\.?0+$/, '') : text
}

/** Eight figures: ten times finer than the hundredth of a per mille the volume has to keep. */
const settingText = (setting: number): string => plain(Number(setting.toPrecision(8)))

/** Settings as they are written; the few of a plan recur in every bead. */
export function settingTexts(): (setting: number) => string {
  const known = new Map<number, string>()
  return setting => {
    const before = known.get(setting)
    if (before !== undefined) return before
    const text = settingText(setting)
    known.set(setting, text)
    return text
  }
}
