import { defaultMix } from '../mix/index.js'
import { assessLift } from './assess-lift.js'
import { memberFactor } from './member-buckling.js'
import { membersOf } from './members.js'
import { evenEnds } from './pace.js'
import { doubleSection } from './shell/double-section.fixture.js'
import { shellBuckling } from './shell/shell-buckling.js'
import type { StandPanel } from './stand-geometry.js'
import { standRulesOf } from './standing.js'

const make = { kind: 'double', thickness: 0.25, bead: 0.05, web: 'zigzag', pitch: 0.6 } as const
const panel = (length: number, supports: StandPanel['supports']): StandPanel => ({
  place: `wall of ${length} m`,
  wall: 'A',
  from: 0,
  to: length,
  length,
  bottom: 0,
  top: 2.7,
  supports,
  make,
})
const panels = [panel(6, 'both'), panel(4, 'both'), panel(2.5, 'one'), panel(1.2, 'one'), panel(1, 'none')]
const rule = (value: number) => ({ value, source: 'the job' })
const rules = standRulesOf({
  mix: defaultMix,
  print: { layerHeight: 0.02 },
  rules: { standSafety: rule(1.5), imperfection: rule(0.6) },
  sections: [],
})
const age = (layerTime: number) => ({ layerHeight: 0.02, ends: evenEnds(50, layerTime), factor: 1 })
const [wall] = membersOf({ section: 'A', panels }, rules, 0, 1)

/** Speeds that matter: the scheduler's inner loop, the whole campaign, the shells of a long section. */
export const bench = (): readonly { readonly name: string; readonly run: () => void }[] => [
  {
    name: 'stand: one strip of a double wall, lowest factor',
    run: () => {
      memberFactor(wall!, age(420), 50, rules)
    },
  },
  {
    name: 'stand: 25 lifts of 50 layers, 5 panels each',
    run: () => {
      for (let lift = 0; lift < 25; lift++)
        assessLift({ section: 'A', panels }, 1, age(360 + 5 * lift), rules)
    },
  },
  {
    name: 'stand: shells of a 30 m double section, 1 m high',
    run: () => {
      shellBuckling(doubleSection(30))
    },
  },
]
