import type { RuleValue } from '../job/index.js'
import { sayQuantity, type Units } from '../limit/index.js'
import {
  type Celsius,
  type CubicMetres,
  formatQuantity,
  type KilogramsPerCubicMetre,
  type Metres,
  type MetresPerSecond,
  type Pascals,
  type Seconds,
} from '../quantity/index.js'
import type { Finding } from '../result/index.js'
import { assert } from '../result/index.js'
import { columnPressure, columnRateFor, type FillChemistry, headPressure } from './lateral-pressure.js'
import { plainTension, stripPressure } from './shell-strength.js'

/** A column or bond beam cast inside a printed wall: clear inside of the shell. */
export interface Cavity {
  readonly id: string
  /** Along the wall, and across it between the wythes. */
  readonly length: Metres
  readonly depth: Metres
  readonly height: Metres
  /** Thickness of the wythes that hold the fill. */
  readonly shell: Metres
  /** Cage cover to the printed shell. */
  readonly cover: Metres
}

/** What goes in. A `flowing` fill presses with its full head until it has set. */
export interface Fill {
  readonly kind: 'flowing' | 'vibrated'
  readonly density: KilogramsPerCubicMetre
  readonly chemistry: FillChemistry
  readonly temperature: Celsius
  /** Time until a flowing fill carries itself and presses no more. */
  readonly set: Seconds
  /** Largest grain. */
  readonly aggregate: Metres
}

export interface PourRules {
  /** On the pressure of the fill. */
  readonly loadFactor: RuleValue
  /** On the shell's tension: printed layers are not solid concrete. */
  readonly layerFactor: RuleValue
  /** Least cover of a cage in the fill. */
  readonly coverLeast: RuleValue
  /** Tallest lift of a pour, whatever the shell bears. */
  readonly liftMost: RuleValue
}

export const defaultPourRules: PourRules = {
  loadFactor: { value: 1.6, source: '[ACI318-19] table 5.3.1, live load, from memory' },
  layerFactor: { value: 0.5, source: 'common practice, no source: confirm with a trial pour' },
  coverLeast: {
    value: 0.02,
    source: 'common practice, no source; the shell counts as no cover until agreed',
  },
  liftMost: { value: 1.2, source: 'common practice, no source: fill with the wall, one lift a day' },
}

export interface PourPlan {
  readonly cavity: string
  readonly volume: CubicMetres
  /** Fresh height that may stand in the shell at once, and the lifts that make up the cavity. */
  readonly liftHeight: Metres
  readonly lifts: number
  readonly liftVolume: CubicMetres
  /** Wait between lifts; none for a vibrated fill, which is held back by its rate. */
  readonly wait: Seconds
  /** Fastest rise. A flowing fill may rise as fast as it is watched: its head is limited, not its rate. */
  readonly rateMost?: MetresPerSecond
  /** Pressure of a full lift, and what the shell bears after factors. */
  readonly pressure: Pascals
  readonly bearable: Pascals
  readonly findings: readonly Finding[]
}

/**
 * How a printed shell is filled without bursting: lift height (and rate) whose pressure its sides bear at their strength.
 * The sides span between the cross ties, simply supported, bending along the layers.
 *
 * @param strength  compressive strength of the shell when the pour starts [Pa]
 */
export function planPour(
  cavity: Cavity,
  fill: Fill,
  strength: Pascals,
  rules: PourRules = defaultPourRules,
  units: Units = 'metric',
): PourPlan {
  assert(cavity.length > 0 && cavity.depth > 0 && cavity.height > 0, `cavity ${cavity.id} has a size`)
  assert(strength >= 0 && Number.isFinite(strength), 'a shell has a strength')
  const bearable = bearablePressure(cavity, strength, rules)
  const head = Math.min(cavity.height, rules.liftMost.value)
  const rateMost = fill.kind === 'vibrated' ? columnRateFor(bearable, fill) : undefined
  const byShell = bearable / headPressure(fill.density, 1)
  const most = fill.kind === 'vibrated' && rateMost !== undefined ? head : Math.min(head, byShell)
  const lifts = most > 0 ? Math.ceil(cavity.height / most - 1e-9) : 0
  const liftHeight = lifts > 0 ? cavity.height / lifts : 0
  const area = cavity.length * cavity.depth
  return {
    cavity: cavity.id,
    volume: area * cavity.height,
    liftHeight,
    lifts,
    liftVolume: area * liftHeight,
    wait: fill.kind === 'flowing' && lifts > 1 ? fill.set : 0,
    ...(rateMost === undefined ? {} : { rateMost }),
    pressure: pressureOf(fill, liftHeight, rateMost),
    bearable,
    findings: [
      shellFinding(cavity, fill, bearable, most, rules, units),
      ...coverFindings(cavity, fill, rules, units),
    ],
  }
}

/** A vibrated fill at its fastest rise, or the full head of the lift. */
const pressureOf = (fill: Fill, height: Metres, rate: MetresPerSecond | undefined): Pascals =>
  rate === undefined ? headPressure(fill.density, height) : columnPressure({ ...fill, rate, height })

/** Pressure [Pa] that the weaker of the two side pairs bears, load and layer factors taken off. */
export function bearablePressure(
  cavity: Cavity,
  strength: Pascals,
  rules: PourRules = defaultPourRules,
): Pascals {
  const tension = plainTension(strength) * rules.layerFactor.value
  const span = Math.max(cavity.length, cavity.depth)
  return stripPressure(tension, span, cavity.shell, 'supported') / rules.loadFactor.value
}

/** A pour lift under this is not worth opening the hose for: wait for strength instead. */
export const LEAST_LIFT: Metres = 0.3

function shellFinding(
  cavity: Cavity,
  fill: Fill,
  bearable: Pascals,
  most: Metres,
  rules: PourRules,
  units: Units,
): Finding {
  const demand = headPressure(fill.density, Math.min(cavity.height, LEAST_LIFT))
  const fits = bearable >= demand
  const advice = fits
    ? `Fill at most ${formatQuantity(most, 'length', units)} at a time.`
    : 'Wait until the shell is stronger, add cross ties, or brace it.'
  return {
    check: 'pour-pressure',
    at: cavity.id,
    demand,
    capacity: bearable,
    unit: 'Pa',
    source: `[ACI318-19] plain concrete, layer factor ${rules.layerFactor.value} (${rules.layerFactor.source})`,
    verdict: fits ? 'pass' : 'fail',
    say: `The shell bears ${sayQuantity(bearable, 'Pa', units)} of fresh fill over a span of ${formatQuantity(Math.max(cavity.length, cavity.depth), 'length', units)} at its age. ${advice} A screening value: a licensed engineer confirms it and a trial pour proves it; nobody stands in front of a shell being filled.`,
  }
}

function coverFindings(cavity: Cavity, fill: Fill, rules: PourRules, units: Units): Finding[] {
  const size = (metres: Metres) => formatQuantity(metres, 'length', units)
  const through = (4 / 3) * fill.aggregate
  const least = Math.max(rules.coverLeast.value, through)
  const room = Math.min(cavity.length, cavity.depth) - 2 * cavity.cover
  const cover: Finding = {
    check: 'cage-cover',
    at: cavity.id,
    demand: least,
    capacity: cavity.cover,
    unit: 'm',
    source: least === through ? '[ACI318-19] 25.2' : rules.coverLeast.source,
    verdict: cavity.cover >= least ? 'pass' : 'fail',
    say: `The cage has ${size(cavity.cover)} to the shell; the fill needs ${size(least)} to get round it.`,
  }
  if (room > 0.05) return [cover]
  return [
    cover,
    {
      check: 'cage-room',
      at: cavity.id,
      demand: 0.05,
      capacity: room,
      unit: 'm',
      source: 'common practice, no source',
      verdict: 'fail',
      say: `Between two covers of ${size(cavity.cover)} ${size(room)} are left for the cage; widen the column or use one bar in the middle.`,
    },
  ]
}
