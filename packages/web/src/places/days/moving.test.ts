import type { PrintDay } from '@dawnlift/core/campaign'
import { editJob, type JobEdit, type RawJob, rawJob } from '@dawnlift/document/job'
import { describe, expect, it } from 'vitest'
import { liftName, pinEdits, unpinEdits } from './pin-edits.js'
import { weeksOf } from './weeks.js'

const edited = (text: string, make: (raw: RawJob) => readonly JobEdit[]) => {
  const before = rawJob(text)
  const result = editJob(text, make(before.ok ? before.value : {}))
  if (!result.ok) throw new Error(result.problems[0]?.say)
  const raw = rawJob(result.value)
  return raw.ok ? raw.value.pins : undefined
}
const b3 = { section: 'B', lift: 3 }

describe('a lift pinned', () => {
  const pinned =
    'name: Shed\npins:\n  - { section: A, lift: 1, on: 2026-07-06 }\n  - { section: B, lift: 3, on: 2026-07-10 }\n'
  it('stands in the job behind the pins there are', () =>
    expect(
      edited('name: Shed\npins:\n  - { section: A, lift: 1, on: 2026-07-06 }\n', raw =>
        pinEdits(raw, b3, '2026-07-14'),
      ),
    ).toEqual([
      { section: 'A', lift: 1, on: '2026-07-06' },
      { section: 'B', lift: 3, on: '2026-07-14' },
    ]))
  it('goes to the new date when it is pinned again', () =>
    expect(edited(pinned, raw => pinEdits(raw, b3, '2026-07-15'))).toEqual([
      { section: 'A', lift: 1, on: '2026-07-06' },
      { section: 'B', lift: 3, on: '2026-07-15' },
    ]))
  it('is let go, the list with its last pin', () => {
    expect(edited(pinned, raw => unpinEdits(raw, b3))).toEqual([{ section: 'A', lift: 1, on: '2026-07-06' }])
    expect(
      edited('pins:\n  - { section: B, lift: 3, on: 2026-07-10 }\nname: Shed\n', raw => unpinEdits(raw, b3)),
    ).toBeUndefined()
  })
  it('is named by its section and number', () => {
    expect(liftName('A12', 'A1')).toEqual({ section: 'A1', lift: 2 })
    expect(liftName('B', 'B')).toBeUndefined()
  })
})

describe('weeks of the board', () => {
  const day = (date: string) => ({ date, lifts: [] }) as unknown as PrintDay
  // 2026-07-08 is a Wednesday, 2026-07-14 a Tuesday.
  const weeks = weeksOf([day('2026-07-08'), day('2026-07-14')], date => date !== '2026-07-12')
  it('begin on Monday and give one week more than is needed', () =>
    expect(weeks.map(week => week[0]?.date)).toEqual(['2026-07-06', '2026-07-13', '2026-07-20']))
  it('know the days that are printed on and those nobody works', () => {
    expect(weeks[0]?.filter(each => each.day).map(each => each.date)).toEqual(['2026-07-08'])
    expect(weeks[0]?.at(-1)).toEqual({ date: '2026-07-12', works: false })
  })
})
