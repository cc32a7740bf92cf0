import { machineProfile } from '@dawnlift/core/machine'
import { defaultMix } from '@dawnlift/core/mix'
import { nextTrials } from '@dawnlift/core/trial'
import { expect, it } from 'vitest'
import { foreignUnits } from '../../../../tests/foreign-units.js'
import { readTrials } from '../mix-tests/index.js'
import { inspectRun, readMachineFile } from '../rs274/index.js'
import { interpret, outsideInterpreter } from '../rs274/outside-interpreter.js'
import { cornerSampler, speedLadder, trialSheet, trialWall } from './index.js'

const print = { beadWidth: 0.05, layerHeight: 0.02, speed: 0.15, temperature: 20 }
const machine = machineProfile('gantry-12')!
const ladder = speedLadder(machine, print)
const sampler = cornerSampler(machine, print)
const program = outsideInterpreter()
const runOf = (text: string) => {
  const read = readMachineFile(text)
  if (!read.ok) throw new Error(read.problems[0]?.say)
  return inspectRun(read.value, { machine })
}

it('lays four beads of the ladder, each a metre and a half at its own speed, beside one another', () => {
  const runs = ladder.map(({ text }) => runOf(text))
  // hand: 0.5, 0.75, 1 and 1.25 times 150 mm/s; 112.5 falls to 112 as 0.75 × 0.15 lies just under it in binary
  expect(ladder.map(({ name }) => name)).toEqual([
    'ladder-1-75-mm-s.ngc',
    'ladder-2-112-mm-s.ngc',
    'ladder-3-150-mm-s.ngc',
    'ladder-4-188-mm-s.ngc',
  ])
  for (const { length, notes } of runs) {
    expect(length).toBeCloseTo(1.5, 3)
    expect(notes).toEqual([])
  }
  // hand: 1.5 m at 75 and at 150 mm/s, the pump's start lag waited for in both
  const { startLag } = machine.pump
  expect(runs[0]!.feedTime / runs[2]!.feedTime).toBeCloseTo((20 + startLag) / (10 + startLag), 3)
  expect(new Set(runs.map(({ extents }) => JSON.stringify(extents))).size).toBe(4)
})

it('says beforehand how slow the nozzle gets in each corner, the sharper the slower', () => {
  const round = cornerSampler({ ...machine, headingRate: 0 }, print)
  const said = /slows to ([\d, m/s]+) in them/.exec(round.words[1]!)![1]!
  const speeds = said.split(', ').map(each => Number.parseInt(each, 10))
  expect(speeds).toHaveLength(4)
  expect(speeds).toEqual([...speeds].sort((a, b) => b - a))
  expect(speeds[3]).toBeLessThan(speeds[0]!)
  expect(round.text).toContain(round.words[1])
})

it('runs the sampler once round its corners: five straights of 0.8 m', () => {
  const { length, starts, notes } = runOf(sampler.text)
  expect(notes).toEqual([])
  expect(starts).toBeGreaterThanOrEqual(1)
  expect(length).toBeCloseTo(4, 2)
})

it('writes a sheet that the reader of trials knows, its blanks named', () => {
  const sheet = trialSheet(nextTrials(machine, { pump: [], bead: [], lag: [], corner: [] }))
  const read = readTrials(sheet, 'trials.csv')
  const codes = new Set(read.ok ? [] : read.problems.map(({ code }) => code))
  expect(codes).toEqual(new Set(['trials/missing-value']))
})

it.skipIf(!program)(
  `are taken by an outside interpreter${program ? '' : ' (skipped: not installed)'}`,
  () => {
    for (const { text } of [...ladder, sampler]) expect(interpret(program!, text).accepted).toBe(true)
  },
)

it.each(['metric', 'imperial'] as const)(
  'foretells and writes in %s units alone for a site that reads them',
  house => {
    const own = { ...print, units: house }
    const files = [
      ...speedLadder(machine, own),
      cornerSampler(machine, own),
      trialWall(machine, defaultMix, own),
    ]
    for (const { title, words, text } of files)
      expect(foreignUnits([title, ...words, text].join('\n'), house)).toEqual([])
    // Hand: 50 mm / 25.4 = 1.97 in; 75 mm/s = 3.0 in/s.
    expect(files[0]!.words.join()).toMatch(
      house === 'metric' ? /75 mm\/s.*50 mm wide/ : /3\.0 in\/s.*1\.97 in wide/,
    )
  },
)

it('says the flow that is pumped, of which a known share becomes bead', () => {
  const [plain] = speedLadder(machine, print)
  const [thin] = speedLadder({ ...machine, laying: { fill: 0.8 } }, print)
  const said = (words: readonly string[]) => Number(/([\d.]+) L\/min/.exec(words[0]!)![1])
  // hand: 914.159 mm² at 75 mm/s is 4.11 L/min; over 0.8 it is 5.14
  expect(said(plain!.words)).toBeCloseTo(4.11, 1)
  expect(said(thin!.words)).toBeCloseTo(5.14, 1)
})
