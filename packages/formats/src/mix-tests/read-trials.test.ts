import { readFileSync } from 'node:fs'
import { fitBeadModel, fitCornerModel, fitLags, fitPumpCurve } from '@dawnlift/core/trial'
import { describe, expect, it } from 'vitest'
import { readTrials } from './index.js'

const problems = (text: string) => {
  const result = readTrials(text, 't.csv')
  return result.ok ? [] : result.problems.map(({ code, at }) => [code, at])
}

describe('readTrials', () => {
  it('sorts trials by kind, in SI', () => {
    const result = readTrials(
      'kind,setting,caught_kg,during_s,speed,distance\npump,100,21,60,,\nstop,,,,150 mm/s,60 mm',
    )
    expect(result).toMatchObject({
      ok: true,
      value: {
        pump: [{ at: 'trials.csv:2', setting: 100, caught: 21, during: 60 }],
        lag: [{ kind: 'stop', at: 'trials.csv:3', speed: 0.15, distance: 0.06 }],
        bead: [],
        corner: [],
      },
    })
  })
  it.each([
    ['a kind nobody knows', 'kind,setting\npomp,3', ['trials/unknown-kind', 't.csv:2']],
    ['a column nobody knows', 'kind,setings\npump,3', ['trials/unknown-column', 't.csv:1']],
    [
      'a value that is missing',
      'kind,speed_mm/s,distance_mm\nstart,150,',
      ['trials/missing-value', 't.csv:2'],
    ],
    [
      'a setting that is no number',
      'kind,setting,caught_kg,during_s\npump,full,3,60',
      ['trials/not-a-number', 't.csv:2'],
    ],
    ['a number without a unit', 'kind,speed,distance_mm\nstart,150,80', ['quantity/no-unit', 't.csv:2']],
    ['no trials', 'kind,setting', ['trials/empty', 't.csv']],
  ])('%s is a problem', (_, sheet, expected) => expect(problems(sheet)).toContainEqual(expected))
})

describe('the trial sheet shown in the guide', () => {
  const guide = readFileSync(new URL('../../../../docs/guide/machine-trials.md', import.meta.url), 'utf8')
  const sheet = readTrials(/```csv\n(.*?)```/s.exec(guide)![1]!)

  it('is read, and every model can be fitted to it', () => {
    if (!sheet.ok) throw new Error(sheet.problems.map(({ say }) => say).join('\n'))
    const { pump, bead, lag, corner } = sheet.value
    expect([pump.length, bead.length, lag.length, corner.length]).toEqual([4, 3, 3, 2])
    const fits = [fitPumpCurve(pump, 2140), fitBeadModel(bead), fitLags(lag), fitCornerModel(corner)]
    expect(fits.map(({ ok }) => ok)).toEqual([true, true, true, true])
  })
})
