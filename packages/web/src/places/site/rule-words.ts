import type { Rules } from '@dawnlift/core/job'
import { type Dimension, formatQuantity, writeQuantity } from '@dawnlift/core/quantity'
import { type Default, defaultTable } from '@dawnlift/document/job'
import type { Field, FieldKind } from '../fields/index.js'

export type RuleName = keyof Rules

/** What each rule says, as one would say it on site; in the order one meets them. */
export const ruleWords: Readonly<Record<RuleName, string>> = {
  liftHeight: 'A lift is at most this high',
  overnightCure: 'A lift cures this long before the next',
  layerTimeMost: 'A layer longer than this is divided',
  restMost: 'No layer lies bare longer than',
  dryingMost: 'Water a bare layer may lose',
  standSafety: 'Safety on standing height',
  imperfection: 'Real walls reach this share of theory',
  mixTemperatureMost: 'Mix at most',
  mixTemperatureLeast: 'Mix at least',
  airTemperatureLeast: 'Air at least',
  evaporationMost: 'Evaporation at most',
  windMost: 'Wind at most',
  gustMost: 'Gusts at most',
  rainMost: 'Rain at most',
  wbgtMost: 'Heat on the crew (WBGT) at most',
  daylightNeeded: 'Daylight is needed',
}

/** Rules somebody could get hurt by when they are loosened. */
export const guarding: ReadonlySet<RuleName> = new Set([
  'liftHeight',
  'overnightCure',
  'standSafety',
  'imperfection',
  'windMost',
  'gustMost',
  'wbgtMost',
  'daylightNeeded',
])

export const ruleNames = Object.keys(ruleWords) as readonly RuleName[]

const usualOf = (name: RuleName): Default => defaultTable[`rules.${name}`]

const dimensionOf = (name: RuleName): Dimension | undefined => usualOf(name).dimension

export const ruleField = (name: RuleName): Field => {
  const dimension = dimensionOf(name)
  return {
    path: ['rules', name],
    label: ruleWords[name],
    kind: kindOf(name, dimension),
  }
}

function kindOf(name: RuleName, dimension: Dimension | undefined): FieldKind {
  // A factor is not a percentage to anybody who checks standing.
  if (name === 'standSafety') return { kind: 'factor' }
  return dimension ? { kind: 'quantity', dimension } : { kind: 'yes-no' }
}

/** A rule's value with its unit, as its reader reads it. */
export function ruleText(name: RuleName, value: number, units: 'metric' | 'imperial'): string {
  const dimension = dimensionOf(name)
  if (!dimension) return value === 0 ? 'no' : 'yes'
  if (name === 'standSafety') return value.toFixed(2)
  if (dimension === 'time' && value >= 7200) return writeQuantity(value, 'time', 'h')
  return formatQuantity(value, dimension, units)
}

export interface RuleOrigin {
  /** `the job` or where the default comes from. */
  readonly source: string
  readonly why: string
  readonly usual: Default
}

export function ruleOrigin(name: RuleName, given: boolean): RuleOrigin {
  const usual = usualOf(name)
  return given
    ? { source: 'the job', why: `usual is ${usual.text}: ${usual.why}`, usual }
    : { source: usual.source, why: usual.why, usual }
}
