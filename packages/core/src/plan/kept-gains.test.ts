import { describe, expect, it } from 'vitest'
import type { LayerGain, SectionWork } from '../campaign/index.js'
import type { SectionRoutes } from '../route/index.js'
import type { StandGeometry } from '../stand/index.js'
import type { PrintHour } from '../weather/index.js'
import { knownGains, newGainCache, type PrintedSection } from './kept-gains.js'

const work: SectionWork = {
  section: 'A',
  layerHeight: 0.02,
  printTimes: [300],
  lengths: [3],
  volumes: [0.1],
  holds: [],
  liftEnds: [],
}
const section: PrintedSection = {
  work,
  routes: { section: 'A', routes: [] } as unknown as SectionRoutes,
  geometry: { section: 'A', panels: [] } as StandGeometry,
}
const hold = { afterLayer: 1, duration: 300, reason: 'embed', ref: 'E1' } as const

describe('next gains kept from plan to plan', () => {
  it('know a section again by its routes and panels, whatever work it comes in', () => {
    const cache = newGainCache()
    const number = (one: PrintedSection) => knownGains(cache, [one]).sectionNumber('A')
    const first = number(section)
    expect(number({ ...section, work: { ...work } })).toBe(first)
    expect(number({ ...section, work: { ...work, holds: [hold] } })).not.toBe(first)
    expect(number({ ...section, routes: { ...section.routes } })).not.toBe(first)
    expect(number({ ...section, geometry: { ...section.geometry } })).not.toBe(first)
  })
  it('are looked for once under a key and one list of hours', () => {
    const known = knownGains(newGainCache(), [section])
    const [hours, others]: PrintHour[][] = [[], []]
    let made = 0
    const ask = (list: readonly PrintHour[], key: string) =>
      known.gains(list, key, () => [{ layers: ++made } as LayerGain])
    const first = ask(hours!, 'a')
    expect(ask(hours!, 'a')).toBe(first)
    ask(hours!, 'b')
    ask(others!, 'a')
    expect(made).toBe(3)
    expect(known.finish(hours!, 'a', () => '2026-07-06')).toBe('2026-07-06')
    expect(known.finish(hours!, 'a', () => '2026-07-07')).toBe('2026-07-06')
  })
})
