import { describe, expect, it } from 'vitest'
import { rangeOfLine } from './mend-document.js'
import { lineOf } from './problem-list.js'

describe('the line of a problem', () => {
  it('is read from its place in the job', () =>
    expect(lineOf({ at: 'job.yaml:41:9 walls[3].thickness' })).toBe(41))
  it('is the first where only the job is named', () => expect(lineOf({ at: 'job.yaml' })).toBe(1))
  it('is not known in other files', () => expect(lineOf({ at: 'plan.dxf, wall S' })).toBeUndefined())
})

describe('a line of a text', () => {
  const text = 'one\ntwo\nthree'
  it('runs from its first letter to its last', () => expect(text.slice(...rangeOfLine(text, 2))).toBe('two'))
  it('ends with the text where there is no such line', () => expect(rangeOfLine(text, 9)).toEqual([13, 13]))
})
