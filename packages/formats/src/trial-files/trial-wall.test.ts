import { machineProfile } from '@dawnlift/core/machine'
import { defaultMix } from '@dawnlift/core/mix'
import { expect, it } from 'vitest'
import { inspectRun, readMachineFile } from '../rs274/index.js'
import { interpret, outsideInterpreter } from '../rs274/outside-interpreter.js'
import { trialWall } from './index.js'

const print = { beadWidth: 0.05, layerHeight: 0.02, speed: 0.15, temperature: 20 }
const machine = machineProfile('gantry-12')!
const file = trialWall(machine, defaultMix, print)
const program = outsideInterpreter()

const foretold = (words: string): number[] =>
  [...words.matchAll(/fails at layer (\d+)/g)].map(each => Number(each[1]))

it('says beforehand at which layer it fails, the lower band no later than the fitted curve', () => {
  const [best, least] = foretold(file.words[0]!)
  expect(least).toBeGreaterThan(1)
  expect(best).toBeGreaterThanOrEqual(least!)
  expect(file.text).toContain(file.words[0])
})

it('keeps people its full height and four feet away', () =>
  // hand: 80 layers of 20 mm are 1.6 m; 1.6 + 1.2192 = 2.82 m, rounded up to a tenth [OSHA1926.706]
  expect(file.words[1]).toContain('stand clear by 2.9 m'))

it('reads back as one metre of bead a layer, taking the time it was foretold for', () => {
  const read = readMachineFile(file.text)
  if (!read.ok) throw new Error(read.problems[0]?.say)
  const { length, layers, notes } = inspectRun(read.value, { machine })
  expect(notes).toEqual([])
  expect(layers.length).toBe(80)
  expect(length).toBeCloseTo(80, 2)
  const said = Number(/at (\d+) s a layer/.exec(file.words[0]!)![1])
  // the words are rounded to whole seconds
  expect(Math.abs(layers[40]!.plannedTime - said)).toBeLessThan(0.6)
})

it.skipIf(!program)(`is taken by an outside interpreter${program ? '' : ' (skipped: not installed)'}`, () =>
  expect(interpret(program!, file.text).accepted).toBe(true),
)
