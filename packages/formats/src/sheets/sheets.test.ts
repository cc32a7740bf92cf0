import { readFileSync } from 'node:fs'
import { inflateSync } from 'node:zlib'
import { jobPours } from '@dawnlift/core/pour'
import { awkwardPlan, smallMixFit, smallPlan, smallSay } from '@dawnlift/drawing/examples'
import { paperPalette, sectionFill } from '@dawnlift/drawing/paper'
import { describe, expect, it } from 'vitest'
import { dayData } from './day-sheet.js'
import { daySheet, daySheets, permitPackage, templateFolder, tradeSheet } from './index.js'
import { permitData } from './permit-package.js'
import { tradeData } from './trade-sheet.js'

const plan = smallPlan()
const options = {
  date: '1 July 2026, 18:00',
  say: smallSay,
  cureOf: () => ['12:40 cover A and B with wet burlap'],
}

/** The PDF's objects with their compressed streams opened. */
function opened(pdf: Uint8Array): string {
  const bytes = Buffer.from(pdf)
  const raw = bytes.toString('latin1')
  const parts = [raw]
  for (const match of raw.matchAll(/stream\r?\n/g)) {
    const from = match.index + match[0].length
    try {
      parts.push(inflateSync(bytes.subarray(from)).toString('latin1'))
    } catch {
      // Not a deflated stream: a font or plain text.
    }
  }
  return parts.join('\n')
}
const pagesOf = (pdf: Uint8Array): number => (opened(pdf).match(/\/Type\s*\/Page[^s]/g) ?? []).length
const facesOf = (pdf: Uint8Array): string[] =>
  [
    ...new Set(
      [...opened(pdf).matchAll(/\/BaseFont\s*\/[A-Z]{6}\+([A-Za-z]+)/g)].map(match => match[1] ?? ''),
    ),
  ].sort()

describe('day sheets', () => {
  const all = daySheets(plan, options)

  it('are a page a day on a usual site', () => expect(pagesOf(all)).toBe(plan.campaign.days.length))

  it('hold their drawings as vectors', () => expect(opened(all)).not.toMatch(/\/Subtype\s*\/Image/))

  it('are lettered in the two faces the compiler carries', () =>
    expect(facesOf(all)).toEqual(['DejaVuSansMono', 'LibertinusSerif']))

  it('are the same bytes twice', () =>
    expect(Buffer.from(daySheets(plan, options)).equals(Buffer.from(all))).toBe(true))

  it('name every call of the day in time order', () => {
    const data = dayData(plan, '2026-07-14', options)
    expect(data.calls.map(call => call.id)).toEqual(['J1', 'C1/2', 'X1', 'A1', 'N1', 'H1'])
    expect([...data.calls].sort((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : 0))).toEqual(
      data.calls,
    )
  })

  it('say why each lift stops, what buys more, and that an engineer decides', () => {
    const data = dayData(plan, '2026-07-14', options)
    expect(data.lifts[0]?.stops).toBe('buckling: 1.0 of 1.0 m')
    expect(data.lifts[0]?.gain).toContain('buys 4 layers')
    expect(data.engineer).toContain('licensed engineer')
    // hand: 2.4 m + 4 ft = 3.62 m, rounded up to 3.7 m
    expect(data.cautions.join(' ')).toMatch(/3\.70 m beside it.*OSHA 1926\.706.*silica/s)
  })

  it('tell the rounds of a later day as one, from the first to the last, and not as a round of all their water', () => {
    const cure = plan.cure.map(lift => ({
      ...lift,
      steps: lift.steps.map(step =>
        step.do === 'wet'
          ? { ...step, until: step.at + 3600, litres: 90, say: '4 rounds, 90 L in all' }
          : step,
      ),
    }))
    const { cure: lines } = dayData({ ...plan, cure }, '2026-07-14', options)
    expect(lines).toContain('11:30–12:30 A2: 4 rounds, 90 L in all')
    expect(lines.join(' ')).not.toContain('a round')
  })
  it('say work and rest where the crew needs rest, and bare skin where it may freeze', () => {
    const dayOf = (wbgt: number, air: number, wind: number) => {
      const hours = plan.campaign.hours.map(hour => ({
        ...hour,
        wbgt,
        weather: { ...hour.weather, air, wind },
      }))
      return dayData({ ...plan, campaign: { ...plan.campaign, hours } }, '2026-07-14', options).cautions.join(
        ' ',
      )
    }
    expect(dayOf(29, 32, 2)).toMatch(
      /min work, \d+ min rest in shade each hour for moderate work.* \(NIOSH2016\)/,
    )
    expect(dayOf(-20, -20, 12)).toMatch(/Wind chill -\d+ °C: bare skin can freeze .* \(Osczevski2005\)/)
    expect(dayOf(18, 20, 2)).not.toMatch(/rest in shade each hour|Wind chill/)
  })
  it('gather the wetting rounds of a lift in one line and show them on the clock', () => {
    const data = dayData(plan, '2026-07-14', { date: options.date })
    // hand: A2 ends 08:30, B2 11:40; rounds 3, 5.5 and 8 hours later
    expect(data.cure).toEqual([
      'Wet A2 at 11:30, 14:00, 16:30; up to 14 L a round.',
      'Wet B2 at 14:40, 17:10, 19:40; up to 14 L a round.',
      '09:00 A2: wet burlap on both faces and the top',
      '12:10 B2: wet burlap on both faces and the top',
    ])
    expect(data.clock.match(/<title>wet the burlap<\/title>/g)).toHaveLength(6)
  })

  it('caution about lifting only where a lintel is called', () => {
    const about = (date: string) =>
      dayData(plan, date, options).cautions.some(caution => caution.startsWith('Lintels'))
    expect([about('2026-07-13'), about('2026-07-17')]).toEqual([false, true])
  })

  it('stay whole with long names, names from right to left, and a full day', () => {
    const pdf = daySheets(awkwardPlan(), options)
    expect(pagesOf(pdf)).toBeGreaterThan(plan.campaign.days.length)
    expect(facesOf(pdf)).toEqual(['DejaVuSansMono', 'LibertinusSerif'])
  })

  it('go on to a second page only when twice the calls no longer fit at the closest setting', () => {
    const busy = (times: number) => {
      const calls = plan.calls.filter(call => call.date === '2026-07-14')
      const more = Array.from({ length: times }, (_, n) =>
        calls.map(call => ({ ...call, id: `${call.id}-${n}` })),
      )
      return pagesOf(daySheet({ ...plan, calls: more.flat() }, '2026-07-14', options))
    }
    expect([busy(1), busy(2), busy(5)]).toEqual([1, 1, 2])
  })

  it('say tools and proofs once for the calls that share them, and leave none out', () => {
    const data = dayData(plan, '2026-07-14', options)
    expect(data.tools.flatMap(tool => tool.calls.split(' ')).sort()).toEqual(
      data.calls.map(call => call.id).sort(),
    )
    const pairs = data.tools.map(tool => `${tool.tool} ${tool.proof}`)
    expect(new Set(pairs).size).toBe(pairs.length)
  })

  it('tell a pour on the next print day, with its lifts, its pressure and its caution', () => {
    const pour = jobPours(plan.job, () => 1e6).pours
    const filled = { ...plan, pours: pour }
    const told = plan.campaign.days.map(day =>
      dayData(filled, day.date, options).pours.map(row => row.column),
    )
    // hand: every column comes up with the last lift of its section, on or before the last day
    expect(told.flat().sort()).toEqual(pour.map(each => each.cavity).sort())
    const row = dayData(filled, plan.campaign.days.at(-1)!.date, options)
    expect(row.pours[0]?.how).toMatch(/lifts? of at most .* presses .* kPa on the shell; it bears .* kPa/)
    expect(row.pourCaution).toMatch(/engineer.*Nobody stands before a shell/)
    expect(opened(daySheet(filled, plan.campaign.days.at(-1)!.date, options)).length).toBeGreaterThan(0)
  })

  it('forbid a pour whose shell fails', () => {
    const weak = { ...plan, pours: jobPours(plan.job, () => 1000).pours }
    const row = dayData(weak, plan.campaign.days.at(-1)!.date, options).pours[0]
    expect(row?.caution).toMatch(/^Do not fill: pour pressure fails/)
  })

  it('of a date without printing is a bug of the caller', () =>
    expect(() => daySheet(plan, '2026-07-15', options)).toThrow('is a print day'))
})

describe('the templates', () => {
  it('tint sections as the drawings do', () => {
    const page = readFileSync(`${templateFolder}/page.typ`, 'utf8')
    const tints = [...(page.match(/#let tints = \((.*)\)\.map/)?.[1] ?? '').matchAll(/#[0-9a-f]{6}/g)].map(
      match => match[0],
    )
    expect(tints).toEqual([0, 1, 2, 3, 4, 5].map(index => paperPalette[sectionFill(index)]))
  })
})

describe('trade sheet', () => {
  it('has every call of the trade and no other', () => {
    const data = tradeData(plan, 'electrical', options)
    const ids = data.days.flatMap(day => day.calls.map(call => call.id))
    expect(ids.sort()).toEqual(
      plan.calls
        .filter(call => call.trade === 'electrical')
        .map(call => call.id)
        .sort(),
    )
  })

  it('shows each wall from the face one stands before', () => {
    const data = tradeData(plan, 'electrical', options)
    expect(data.walls.map(wall => [wall.wall, wall.side])).toEqual([
      ['East wall', 'left'],
      ['South wall', 'left'],
    ])
  })

  it('of an inspector says by when to give notice', () => {
    const [first] = plan.calls
    const inspected = { ...first!, id: 'I1', trade: 'inspector' as const, what: 'inspection' as const }
    const calls = [...plan.calls, { ...inspected, tellBy: inspected.from - 86400 }]
    const data = tradeData({ ...plan, calls }, 'inspector', options)
    const rows = data.days.flatMap(day => day.calls)
    expect(rows.map(row => row.id)).toEqual(['I1'])
    expect(rows[0]!.tool).toMatch(/; told by 2026-\d\d-\d\d \d\d:\d\d$/)
  })

  it('is set for every trade of a crowded job', () => {
    const hard = awkwardPlan()
    for (const trade of new Set(hard.calls.map(call => call.trade)))
      expect(pagesOf(tradeSheet(hard, trade, options))).toBeGreaterThan(0)
  })
})

describe('permit package', () => {
  it('ends in a page for each drawing', () => {
    // Four bands, four walls, one campaign, the lift nearest to falling, the hottest one; then the mix tests.
    const pages = pagesOf(permitPackage(plan, options))
    const tested = pagesOf(permitPackage(plan, { ...options, mixFit: smallMixFit() }))
    expect([pages, tested - pages]).toEqual([1 + 4 + 4 + 1 + 2, 1])
  })

  it('lists every pour with its caution', () => {
    const pours = jobPours(plan.job, () => 1e6).pours
    const rows = permitData({ ...plan, pours }, options).pours
    expect(rows.map(row => row.column)).toEqual(pours.map(pour => pour.cavity))
    expect(
      rows.every(row => row.caution.includes('cubes or cylinders') || row.caution.includes('never bears')),
    ).toBe(true)
  })
})
