import { instantAt } from '@dawnlift/core/clock'
import { openSpans } from '@dawnlift/core/weather'
import { describe, expect, it } from 'vitest'
import { marksOf, refOf, scenes, smallPlan, smallSay, span, textsOf } from '../examples/index.js'
import {
  figure,
  type LineMark,
  type Mark,
  paperSheet,
  type TextMark,
  textHeights,
  textWidth,
} from '../paper/index.js'
import {
  drawDayClock,
  drawLayerPlan,
  drawLimits,
  drawSharedSite,
  drawTimeHeight,
  drawTradeOff,
  unbeaten,
} from './index.js'

const plan = smallPlan()
const words = { job: 'Orchard pavilion', revision: 'C', date: '1 July 2026' }
const sheet = paperSheet('A3', 'landscape', words)
/** The rectangle a line of text fills, from the lettering's fixed width. */
function cover(mark: TextMark): readonly [number, number, number, number] {
  const width = textWidth(mark.text, mark.height)
  const start = mark.anchor === 'start' ? 0 : mark.anchor === 'middle' ? -width / 2 : -width
  const [x, y] = mark.at
  const high = textHeights[mark.height] * 0.75
  return mark.turn === 90
    ? [x - high, y + start, x, y + start + width]
    : [x + start, y, x + start + width, y + high]
}

describe('every drawing', () => {
  it.each(Object.keys(scenes))('%s keeps its words on the sheet', name => {
    const drawing = scenes[name]!()
    for (const mark of textsOf(drawing)) {
      const [x0, y0, x1, y1] = cover(mark)
      expect({
        text: mark.text,
        on: x0 >= 0 && y0 >= 0 && x1 <= drawing.width && y1 <= drawing.height,
      }).toEqual({
        text: mark.text,
        on: true,
      })
    }
  })

  it.each(Object.keys(scenes))('%s is plain data', name => {
    const drawing = scenes[name]!()
    expect(JSON.parse(JSON.stringify(drawing))).toEqual(drawing)
  })
})

describe('drawLayerPlan', () => {
  const drawing = drawLayerPlan(plan, 47, sheet)

  it('draws beads at their true width', () => {
    // hand: the sheet takes 1:25, a bead of 50 mm is 2 mm wide
    const widths = marksOf(drawing, 'beads').flatMap(mark =>
      mark.kind === 'ribbon' && mark.ref ? [mark.width] : [],
    )
    expect(new Set(widths)).toEqual(new Set([2]))
  })

  it('shows what is in the layer and nothing else', () => {
    const refs = marksOf(drawing, 'embeds').flatMap(mark =>
      mark.kind === 'line' && mark.ref ? [mark.ref] : [],
    )
    // Layer 47 lies from 1.15 to 1.175 m: the box X1 (1.1–1.2) and the chase C1 (0–1.2).
    expect(refs.sort()).toEqual(['C1', 'X1'])
  })
})

describe('drawDayClock', () => {
  const drawing = drawDayClock(plan, '2026-07-14', figure(100, 100, words))
  const hourAt = (hour: string) => textsOf(drawing).find(mark => mark.text === hour)!.at

  it('has noon up, midnight down, morning left, evening right', () => {
    expect(hourAt('12')[1]).toBeGreaterThan(90)
    expect(hourAt('00')[1]).toBeLessThan(10)
    expect(hourAt('06')[0]).toBeLessThan(10)
    expect(hourAt('18')[0]).toBeGreaterThan(90)
  })

  it('ends what is open at the minute at which a limit is passed, not on the hour', () => {
    const midnight = instantAt('2026-07-14', 0, plan.job.site.timeZone)
    const spans = openSpans(plan.campaign.hours).filter(
      ({ from, until }) => until > midnight && from < midnight + 86_400,
    )
    const minutes = spans.flatMap(({ from, until }) => [from, until]).map(at => ((at - midnight) / 60) % 60)
    expect(minutes.some(minute => minute > 1 && minute < 59)).toBe(true)
    // Each stretch is drawn in as many pieces as it touches hours, the first and the last cut short.
    const pieces = spans.reduce(
      (sum, { from, until }) =>
        sum + Math.ceil((until - midnight) / 3600) - Math.floor((from - midnight) / 3600),
      0,
    )
    const drawn = marksOf(drawing, 'open').filter(mark => mark.kind === 'line' && mark.title === 'open')
    expect(drawn).toHaveLength(pieces)
  })

  it('stops a call over night at midnight and says so in the list', () => {
    const [call, ...others] = plan.calls.filter(({ date }) => date === '2026-07-14')
    const late = { ...call!, until: call!.from + 26 * 3600 }
    const clock = drawDayClock({ ...plan, calls: [late, ...others] }, '2026-07-14', sheet)
    expect(textsOf(clock).some(({ text }) => text.includes(' next day '))).toBe(true)
    const arc = marksOf(clock, 'calls').find(mark => mark.kind === 'line' && mark.ref === late.id)
    const short = marksOf(drawDayClock(plan, '2026-07-14', sheet), 'calls').find(
      mark => mark.kind === 'line' && mark.ref === late.id,
    )
    const pointsOf = (mark: Mark | undefined) => (mark?.kind === 'line' ? mark.points.length : 0)
    expect(pointsOf(arc)).toBeGreaterThan(pointsOf(short))
    // hand: at most 24 h in pieces of ten minutes, out and back: 2 · 145.
    expect(pointsOf(arc)).toBeLessThanOrEqual(290)
  })

  it('puts a lift between its clock times', () => {
    // hand: A2 runs 05:40–08:30, all left of the middle
    expect(span(refOf(drawing, 'A2'), 0)[1]).toBeLessThan(50)
  })
})

describe('drawTimeHeight', () => {
  it('ends each lift at its printed height', () => {
    const drawing = drawTimeHeight(plan, sheet, smallSay)
    const metres = (height: string) => textsOf(drawing).find(mark => mark.text === height)!.at[1]
    const perMetre = metres('2.00 m') - metres('1.00 m')
    const foot = metres('0.00 m')
    // hand: A1 ends at layer 40, 1.00 m; A3 at layer 92, 2.30 m. A label sits 0.8 mm under its line.
    const top = (id: string) => (span(refOf(drawing, id), 1)[1] - 0.8 - foot) / perMetre
    expect(top('A1')).toBeCloseTo(1, 6)
    expect(top('A3')).toBeCloseTo(2.3, 6)
  })
})

describe('drawLimits', () => {
  it('keeps the lift under what stopped it', () => {
    const lift = plan.campaign.days[1]!.lifts[1]!
    const drawing = drawLimits({ job: plan.job, lift, hours: plan.campaign.hours, say: smallSay }, sheet)
    const top = span(refOf(drawing, lift.id), 1)[1]
    const lines = marksOf(drawing, 'limits').filter(mark => mark.kind === 'line' && mark.pen !== 'dimension')
    for (const mark of lines) expect(span(mark as LineMark, 1)[1]).toBeGreaterThanOrEqual(top - 1e-9)
  })
})

describe('limits of a lift', () => {
  it('have names that lie clear of each other within the chart, however many limits are out of reach', () => {
    const plan = smallPlan()
    const lift = plan.campaign.days[1]!.lifts[1]!
    const far = Array.from({ length: 4 }, (_, n) => ({ limit: lift.binding, layers: 400 + n }))
    const drawn = drawLimits(
      {
        job: plan.job,
        lift: { ...lift, runnersUp: [...lift.runnersUp, ...far] },
        hours: plan.campaign.hours,
        say: smallSay,
      },
      figure(180, 100, { job: '', revision: '', date: '' }),
    )
    const names = drawn.layers
      .find(({ name }) => name === 'limits')!
      .marks.flatMap(mark => (mark.kind === 'text' ? [mark.at[1]] : []))
      .sort((a, b) => a - b)
    expect(names.length).toBe(1 + lift.runnersUp.length + 4)
    for (let n = 1; n < names.length; n++) expect(names[n]! - names[n - 1]!).toBeGreaterThan(2.9)
    expect(names.at(-1)).toBeLessThan(98)
  })
})

describe('finish against cost', () => {
  const row = (name: string, date: string, cost: number) => ({ name, date, cost, calm: 0.5 })
  // Hand: B is as soon as A and dearer, D later and dearer than C: both beaten; E ties with C and stays.
  const rows = [
    row('A', '2026-07-01', 50),
    row('B', '2026-07-01', 60),
    row('C', '2026-07-04', 30),
    row('D', '2026-07-05', 35),
    row('E', '2026-07-04', 30),
  ]
  it('joins the ways that no other beats in both', () => {
    expect(unbeaten(rows).map(each => each.name)).toEqual(['A', 'C', 'E'])
    const drawing = drawTradeOff({ job: 'x', currency: 'EUR', rows }, sheet)
    const [stair] = marksOf(drawing, 'best')
    const [a, c] = ['A', 'C'].map(name => marksOf(drawing, 'ways').find(mark => mark.ref === name))
    if (stair?.kind !== 'line' || a?.kind !== 'circle' || c?.kind !== 'circle') throw new Error('not drawn')
    expect(stair.points.slice(0, 3)).toEqual([a.at, [c.at[0], a.at[1]], c.at])
    expect(drawing.says).toContain('Unbeaten: A')
  })
  it('tells calm by how much of a disc is filled, not by colour', () => {
    const areaOf = (calm: number) => {
      const drawing = drawTradeOff({ job: 'x', currency: 'EUR', rows: [{ ...rows[0]!, calm }] }, sheet)
      const fan = marksOf(drawing, 'ways').find(mark => mark.kind === 'line')
      if (fan?.kind !== 'line') return 0
      const next = (i: number) => fan.points[(i + 1) % fan.points.length]!
      return Math.abs(fan.points.reduce((sum, [x, y], i) => sum + x * next(i)[1] - next(i)[0] * y, 0) / 2)
    }
    expect(areaOf(0)).toBe(0)
    // A fan of so many chords is a little smaller than the sector.
    expect(areaOf(0.25) / areaOf(1)).toBeCloseTo(0.25, 1)
    expect(areaOf(0.75)).toBeGreaterThan(areaOf(0.5))
  })
  it('says what makes a way calm, where it is told', () => {
    const lifts = [{ ...rows[0]!, calmSay: '24 lifts' }]
    const drawing = drawTradeOff({ job: 'x', currency: 'EUR', rows: lifts }, sheet)
    expect(textsOf(drawing).map(mark => mark.text)).toContain('Wed 1 Jul, 24 lifts')
  })
  it('draws one way, and none', () => {
    for (const some of [rows.slice(0, 1), []])
      expect(drawTradeOff({ job: 'x', currency: 'EUR', rows: some }, sheet).layers.length).toBe(5)
  })
})

describe('buildings printed in turn', () => {
  it('measures the days between both ends', () => {
    const growth = (building: string, dates: readonly string[]) => ({
      building,
      evenings: dates.map((date, i) => ({ date, share: (i + 1) / dates.length })),
    })
    const drawing = drawSharedSite(
      {
        site: 'lane',
        shared: [growth('a', ['2026-07-01', '2026-07-02']), growth('b', ['2026-07-01', '2026-07-02'])],
        oneAfterOther: [growth('a', ['2026-07-01', '2026-07-02']), growth('b', ['2026-07-03', '2026-07-04'])],
      },
      sheet,
    )
    expect(textsOf(drawing).map(mark => mark.text)).toContain('2 days sooner')
    expect(drawing.says).toContain('on 2026-07-04 one after the other')
  })
})
