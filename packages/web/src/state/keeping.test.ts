import { describe, expect, it } from 'vitest'
import { changedFiles } from './unsent-files.js'

const [plan, newer, hours] = [[1], [1], [2]].map(bytes => new Uint8Array(bytes))

describe('files that differ', () => {
  it('are those put, changed and taken away', () =>
    expect([
      ...changedFiles({ 'plan.dxf': plan!, 'old.csv': hours! }, { 'plan.dxf': newer!, 'hours.epw': hours! }),
    ]).toEqual([
      ['old.csv', undefined],
      ['plan.dxf', newer],
      ['hours.epw', hours],
    ]))
  it('are none where each is the same', () =>
    expect([...changedFiles({ 'plan.dxf': plan! }, { 'plan.dxf': plan! })]).toEqual([]))
})
