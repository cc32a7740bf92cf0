import { tallyOf } from '@dawnlift/core/tally'
import { smallPlan } from '@dawnlift/drawing/examples'
import { describe, expect, it } from 'vitest'
import { dayData } from '../sheets/day-sheet.js'
import { permitData } from '../sheets/permit-package.js'
import { tradeData } from '../sheets/trade-sheet.js'
import { outputsOf } from './index.js'

const metricPlan = smallPlan()
/** The same plan for a site that measures in feet; what the plan itself says in words was said before. */
const job = { ...metricPlan.job, units: 'imperial' as const }
const { campaign } = metricPlan
const plan = {
  ...metricPlan,
  job,
  calls: metricPlan.calls.map(call => ({ ...call, tool: '' })),
  tally: tallyOf({ job, campaign }),
  cure: [],
  pours: [],
  findings: [],
}
const stamp = { at: plan.campaign.days[0]!.start - 86400, sequence: 1 }
const options = { date: '2026-05-01 12:00', sayGain: () => '' }

/** A number with a metric unit, or a head that names one. */
const metric =
  /(?:\d ?|\()(?:mm|cm|m|km|m²|m2|m³|m3|kg|kg\/m³|t|L|kPa|MPa|°C|km\/h|m\/s|kg\/m²h)(?=[\s"<),.;:]|$)/g

// A paper's own size stays in millimetres.
const found = (text: string): readonly string[] => [
  ...new Set(text.replace(/<svg[^>]*>/g, '').match(metric) ?? []),
]

describe('an imperial job', () => {
  const texts = outputsOf(plan, stamp).filter(({ name }) => /\.(svg|csv|ics)$/.test(name))

  it('has drawings, tables and calendars', () => {
    for (const ending of ['.svg', '.csv', '.ics'])
      expect(texts.filter(({ name }) => name.endsWith(ending)).length).toBeGreaterThan(2)
  })
  it.each(texts)('$name speaks of feet, pounds and °F alone', async ({ make }) =>
    expect(found(String(await make()))).toEqual([]),
  )
  it('has sheets that do so, too', () => {
    const sheets = [
      ...plan.campaign.days.map(day => dayData(plan, day.date, options)),
      tradeData(plan, plan.calls[0]!.trade, options),
      permitData(plan, options),
    ]
    for (const sheet of sheets) expect(found(JSON.stringify(sheet).replaceAll('\\"', '″'))).toEqual([])
  })
})
