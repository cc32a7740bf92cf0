import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inspectRun, readMachineFile, writeLift } from './index.js'
import { inventedLift } from './invented-lift.js'

const file = inventedLift({ fromLayer: 3, toLayer: 4, holds: [] })
const text = writeLift(file)

/** Reads, sums up, and holds every answer to be finite or a list of problems with line and advice. */
function survives(damaged: string): void {
  const result = readMachineFile(damaged)
  if (!result.ok) {
    expect(result.problems.length).toBeGreaterThan(0)
    for (const problem of result.problems) {
      expect(problem.at).toMatch(/^machine file:\d+$/)
      expect(problem.say.length).toBeGreaterThan(10)
    }
    return
  }
  const summary = inspectRun(result.value, { machine: file.machine })
  for (const value of [summary.length, summary.feedTime, summary.plannedTime!, summary.headingRateMost])
    expect(Number.isFinite(value)).toBe(true)
}

describe('a damaged machine file', () => {
  it('that is cut off anywhere is never read as whole', () =>
    fc.assert(
      fc.property(fc.integer({ min: 0, max: text.lastIndexOf('M2') + 1 }), end => {
        expect(readMachineFile(text.slice(0, end)).ok).toBe(false)
      }),
      { numRuns: 200 },
    ))
  it('with a few characters changed gives problems or a finite answer', () =>
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(text.length - 1), fc.string({ minLength: 1, maxLength: 3 })), {
          minLength: 1,
          maxLength: 5,
        }),
        changes => {
          let damaged = text
          for (const [at, by] of changes) damaged = damaged.slice(0, at) + by + damaged.slice(at + by.length)
          survives(damaged)
        },
      ),
      { numRuns: 200 },
    ))
  it('with lines lost or swapped gives problems or a finite answer', () =>
    fc.assert(
      fc.property(fc.shuffledSubarray(text.split('\n')), lines => survives([...lines, 'M2'].join('\n'))),
      { numRuns: 100 },
    ))
  it('made of junk gives problems or a finite answer', () =>
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ maxLength: 300 }), fc.string({ unit: 'binary', maxLength: 300 })),
        survives,
      ),
      { numRuns: 300 },
    ))
  it('made of words in any order gives problems or a finite answer', () => {
    const word = fc.tuple(
      fc.constantFrom(...'GMXYZCFIJRSPNKL'),
      fc.oneof(fc.integer({ min: -3, max: 100 }), fc.constantFrom(92.1, 0.5, 1e9, 1e-9)),
    )
    const line = fc
      .array(word, { maxLength: 6 })
      .map(words => words.map(([letter, value]) => letter + value).join(' '))
    fc.assert(
      fc.property(fc.array(line, { maxLength: 20 }), lines =>
        survives(['G21 G0 X0 Y0 Z0 C0', ...lines, 'M2'].join('\n')),
      ),
      { numRuns: 500 },
    )
  })
})
