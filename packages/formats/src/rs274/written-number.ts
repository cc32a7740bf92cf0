import type { Machine } from '@dawnlift/core/machine'
import { assert } from '@dawnlift/core/result'

/** How lengths are written: file units per metre, and the finest step. */
export interface WrittenUnits {
  readonly perMetre: number
  /** 0.0001 mm or 0.00001 in: twenty times finer than the standard's tolerance on arcs. */
  readonly stepsPerUnit: number
}

export const writtenUnits = (machine: Machine): WrittenUnits =>
  machine.words.units === 'G21'
    ? { perMetre: 1000, stepsPerUnit: 1e4 }
    : { perMetre: 1 / 0.0254, stepsPerUnit: 1e5 }

/** A length in file units, on the grid that is written. */
export const onGrid = (metres: number, units: WrittenUnits): number =>
  Math.round(metres * units.perMetre * units.stepsPerUnit) / units.stepsPerUnit

/** Degrees on the grid of headings, a millionth. */
export const degreesOnGrid = (radians: number): number => Math.round((radians * 180e6) / Math.PI) / 1e6

/** Plain decimal text: RS-274 has no exponents. */
export function plain(value: number): string {
  assert(Number.isFinite(value), 'numbers in a machine file are finite')
  const text = String(value === 0 ? 0 : value)
  return text.includes('e') ? value.toFixed(12).replace(/\.?0+$/, '') : text
}

/** Rounded down to a thousandth, so that no limit is passed by rounding. */
export const feedText = (unitsPerMinute: number): string => plain(Math.floor(unitsPerMinute * 1000) / 1000)

/** Eight figures: ten times finer than the hundredth of a per mille the volume has to keep. */
export const settingText = (setting: number): string => plain(Number(setting.toPrecision(8)))
