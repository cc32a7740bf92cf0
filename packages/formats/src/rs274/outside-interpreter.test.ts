import { machineProfile } from '@dawnlift/core/machine'
import { describe, expect, it } from 'vitest'
import { type FeedMove, readMachineFile, writeLift, writeRestart } from './index.js'
import { inventedLift } from './invented-lift.js'
import { feedEnds, interpret, outsideInterpreter } from './outside-interpreter.js'

const program = outsideInterpreter()
const skipped = program
  ? ''
  : ' (skipped: no interpreter; run `node scripts/outside-tools.mjs` or set DAWNLIFT_RS274)'

const gantry = machineProfile('gantry-12')!
const files = {
  'a lift in millimetres': () => writeLift(inventedLift()),
  'a lift with line numbers': () => writeLift(inventedLift({ lineNumbers: true })),
  'a lift for a round nozzle': () => writeLift(inventedLift({ machine: machineProfile('gantry-12-round')! })),
  'a lift with an air valve': () =>
    writeLift(
      inventedLift({ machine: { ...gantry, words: { ...gantry.words, extraOn: 'M7', extraOff: 'M9' } } }),
    ),
  'a restart': () => writeRestart(inventedLift(), { layer: 8, pass: 1 }),
}

// independent: the interpreter of Debian's linuxcnc-uspace, run as a program
describe('an outside interpreter of the standard', () => {
  it.skipIf(!program).each(Object.entries(files))(
    `accepts %s and ends every move where our reader does${skipped}`,
    (_, write) => {
      const text = write()
      const { accepted, calls, says } = interpret(program!, text)
      expect(says).toBe('')
      expect(accepted).toBe(true)
      const read = readMachineFile(text)
      if (!read.ok) throw new Error(JSON.stringify(read.problems[0]))
      const ours = read.value.steps.filter(
        (step): step is FeedMove => step.kind === 'line' || step.kind === 'arc',
      )
      const theirs = feedEnds(calls)
      expect(theirs.length).toBe(ours.length)
      let worst = 0
      ours.forEach((move, i) => {
        const [x, y, z, , , c] = theirs[i]!
        const heading = ((move.heading ?? 0) * 180) / Math.PI
        worst = Math.max(
          worst,
          Math.abs(move.to.x! * 1000 - x!),
          Math.abs(move.to.y! * 1000 - y!),
          Math.abs(move.to.z! * 1000 - z!),
          Math.abs(heading - c!),
        )
      })
      // canonical calls are printed to four decimals
      expect(worst).toBeLessThan(1e-4)
    },
  )

  it.skipIf(!program)(`accepts a lift in inches${skipped}`, () => {
    const machine = { ...gantry, words: { ...gantry.words, units: 'G20' as const, rotary: 'A' as const } }
    expect(interpret(program!, writeLift(inventedLift({ machine }))).accepted).toBe(true)
  })

  it.skipIf(!program).each([
    ['a word that is none', 'G1 X1 E5 F60'],
    ['a move without feed', 'G1 X5'],
    ['two words of one group', 'G0 G1 X5 F60'],
    ['a negative wait', 'G4 P-1'],
    ['an open comment', '(open'],
    ['an arc without a centre', 'G2 X5 F60'],
    ['an arc by radius that cannot reach', 'G2 X100 Y0 R10 F60'],
  ])(`refuses what our reader refuses: %s${skipped}`, (_, line) => {
    const text = `G21 G90 G17 G94\nG0 X0 Y0 Z0\n${line}\nM2\n`
    expect(readMachineFile(text).ok).toBe(false)
    expect(interpret(program!, text).accepted).toBe(false)
  })
})
