import { describe, expect, it } from 'vitest'
import { ageAtStrength } from '../mix/index.js'
import { dryInland, summerSite } from '../weather/fixtures/summer-site.js'
import { hoursFromNormals, type WeatherHour } from '../weather/index.js'
import {
  type CureCase,
  checkFrost,
  coolingMost,
  covers,
  curePlan,
  cureTargets,
  dryingAdvice,
  heatingNeed,
  leastKept,
  momentOfTraceAge,
  shortestRound,
  wallWeather,
  wettingRounds,
} from './index.js'

const { site, mix } = summerSite
const place = { leftBearing: 1.25 * Math.PI, height: 0.5 }
const build = { kind: 'double', beadWidth: 0.05, thickness: 0.25 } as const
const area = { left: 12, right: 10 }

function caseOn(date: string, change: (hour: WeatherHour) => WeatherHour = hour => hour): CureCase {
  const weather = wallWeather(site, hoursFromNormals(dryInland, site, date, 16).map(change), place)
  const end = weather.first + 13 * 3600
  return {
    job: summerSite,
    lift: { id: 'B3', start: end - 4 * 3600, end },
    build,
    weather,
    mixTemperature: 28,
    area,
  }
}
const summer = caseOn('2026-07-14')
const plan = curePlan(summer)
const winter = caseOn('2026-01-10', hour => ({ ...hour, air: hour.air - 6 }))

const at = (kind: string, of = plan) => of.milestones.find(mark => mark.kind === kind)?.at

describe('curePlan', () => {
  it('covers a summer lift with burlap once it is firm and before the hour is out', () => {
    expect(plan.cover).toBe('wet-burlap')
    const cover = plan.steps.find(step => step.do === 'cover')!
    expect(cover.at).toBeGreaterThanOrEqual(summer.lift.end + 1800)
    expect(cover.at).toBeLessThan(summer.lift.end + 2 * 3600)
  })
  it('keeps its steps in order, with names that stay', () => {
    const times = plan.steps.map(step => step.at)
    expect(times).toEqual([...times].sort((a, b) => a - b))
    expect(new Set(plan.steps.map(step => step.id)).size).toBe(plan.steps.length)
    expect(curePlan(summer).steps.map(step => step.id)).toEqual(plan.steps.map(step => step.id))
  })
  it('brings as much water as dries, and a tenth more', () => {
    const wet = plan.steps.filter(step => step.do === 'wet')
    const last = plan.heat.rewettings.filter(each => each.at < at('uncover')!).at(-1)!.at
    const lost = (key: 'lostLeft' | 'lostRight') => {
      const index = plan.heat.trace.at.filter(at => at <= last).length - 1
      const cover = plan.heat.trace.at.findIndex(at => at >= plan.steps[0]!.at)
      return plan.heat.trace[key][index]! - plan.heat.trace[key][cover]!
    }
    const litres = wet.reduce((sum, step) => sum + step.litres!, 0)
    // hand: litres = 1.1·(12·left + 10·right); half an hour of the trace at each end, 3 %.
    expect(Math.abs(litres / (1.1 * (12 * lost('lostLeft') + 10 * lost('lostRight'))) - 1)).toBeLessThan(0.03)
  })
  it('wets more often by day than by night', () => {
    const wet = plan.steps
      .filter(step => step.do === 'wet')
      .map(step => new Date(step.at * 1000).getUTCHours())
    const between = (from: number, until: number) => wet.filter(hour => hour >= from && hour < until).length
    expect(between(11, 17)).toBeGreaterThan(1.5 * between(0, 6))
  })
  it('tells rounds one by one for the night and the next day, then by the day', () => {
    const singles = plan.steps.filter(step => /-wet-\d+$/.test(step.id))
    const days = plan.steps.filter(step => step.id.includes('-wet-day-'))
    expect(Math.max(...singles.map(step => step.at))).toBeLessThan(summer.lift.end + 36 * 3600)
    expect(Math.max(...singles.map(step => step.at))).toBeGreaterThan(summer.lift.end + 30 * 3600)
    expect(days.map(step => step.id)).toEqual(
      ['B3-wet-day-2', 'B3-wet-day-3', 'B3-wet-day-4', 'B3-wet-day-5'].slice(0, days.length),
    )
    expect(days.length).toBeGreaterThan(1)
  })
  it('asks for a soaker hose where rounds come thick', () =>
    expect(plan.steps.find(step => step.do === 'wet')!.say).toContain('soaker hose'))
  it('warns of plastic in this sun with its temperature', () => {
    const warning = plan.findings.find(finding => finding.check === 'cure-plastic')!
    expect(warning.verdict).toBe('warn')
    expect(warning.demand).toBeGreaterThan(55)
    expect(warning.say).toContain(`${warning.demand.toFixed(0)} °C`)
  })
  it('warns of water that is too cold for the wall', () => {
    const icy = {
      ...summer,
      job: { ...summer.job, batching: { ...summer.job.batching, waterTemperature: 4 } },
    }
    expect(curePlan(icy).findings.map(finding => finding.check)).toContain('cure-water')
    expect(plan.findings.map(finding => finding.check)).not.toContain('cure-water')
  })
  it('wraps a winter lift, says what heating it may need, and watches for frost', () => {
    const cold = curePlan(winter)
    expect(cold.cover).toBe('insulated-blanket')
    expect(cold.steps.some(step => step.do === 'heat')).toBe(true)
    expect(cold.steps.some(step => step.do === 'wet')).toBe(false)
    expect(cold.findings.find(finding => finding.check === 'frost')?.verdict).toBe('pass')
  })
  it('fails a winter lift that is left bare', () => {
    const bare = curePlan({ ...winter, cover: 'bare', mixTemperature: 8 })
    expect(bare.findings.find(finding => finding.check === 'frost')).toMatchObject({
      verdict: 'fail',
      source: 'ACI306-2016',
    })
  })
})

describe('milestones', () => {
  it('come with the age that their strength needs', () => {
    // independent: the mix’s own hyperbola turned round, then the wall’s age turned into clock time.
    const age = ageAtStrength(mix.strength, 5e6)!
    expect(at('pour')).toBeCloseTo(momentOfTraceAge(plan.heat, age)!, 6)
  })
  it('come in the order of their strength', () => {
    expect(at('frost-safe')!).toBeLessThan(at('pour')!)
    expect(at('pour')!).toBeLessThan(at('lintel')!)
    expect(at('lintel')!).toBeLessThan(at('roof')!)
  })
  it('hold the next lift for the job’s own cure', () =>
    expect(at('next-lift')).toBe(summer.lift.end + 12 * 3600))
  it('keep the cover three days at least and seven at most', () => {
    const days = (at('uncover')! - summer.lift.end) / 86400
    expect(days).toBeGreaterThanOrEqual(3)
    expect(days).toBeLessThanOrEqual(7)
  })
  it('come later in the cold under the same cover', () => {
    const [warm, cold] = [summer, { ...winter, mixTemperature: 12 }].map(each =>
      curePlan({ ...each, cover: 'curing-compound' }),
    )
    expect(at('pour', cold)! - winter.lift.end).toBeGreaterThan(at('pour', warm)! - summer.lift.end)
  })
  it('say where the weather known does not reach, or the mix never', () => {
    const strong = { ...mix, strength: { ...mix.strength, ultimate: 4e6 } }
    const weak = curePlan({ ...summer, job: { ...summer.job, mix: strong } })
    expect(weak.milestones.find(mark => mark.kind === 'pour')).toMatchObject({
      say: expect.stringContaining('never reaches'),
    })
    const short = {
      ...summer,
      weather: wallWeather(site, hoursFromNormals(dryInland, site, '2026-07-14', 1), place),
    }
    expect(curePlan(short).milestones.find(mark => mark.kind === 'roof')!.say).toContain(
      'within the weather known',
    )
  })
  it('put a caution beside every load', () => {
    for (const kind of ['next-lift', 'pour', 'lintel', 'roof'])
      expect(plan.milestones.find(mark => mark.kind === kind)!.say).toContain('licensed engineer')
  })
  it('ask four times the weight of the next lift where that is more than half a megapascal', () => {
    const tall = { liftHeight: { value: 8, source: 'the job' } }
    // hand: 4·2150·9.81·8 = 674,928 Pa.
    expect(cureTargets(mix, tall)['next-lift'].strength).toBeCloseTo(674928, 6)
    expect(cureTargets(mix, { liftHeight: { value: 1, source: 'the job' } })['next-lift'].strength).toBe(
      0.5e6,
    )
  })
})

describe('cold weather', () => {
  // published [ACI306-2016], from memory: 55, 50, 45, 40 °F kept; 50, 40, 30, 20 °F of cooling in a day; in whole °C and K.
  it.each([
    [0.2, 13, 28],
    [0.5, 10, 22],
    [1.2, 7, 17],
    [2.5, 5, 11],
  ])('a section of %d m is kept at %d °C and cools by %d K at most', (thickness, kept, cooling) => {
    expect(leastKept(thickness)).toBe(kept)
    expect(coolingMost(thickness)).toBe(cooling)
  })
  it('is kept no more than the rounding of 55, 50, 45 and 40 °F away, less where the section is thicker', () => {
    // hand: (°F − 32)/1.8 = 12.78, 10, 7.22, 4.44 °C; steps at 12, 36 and 72 in; 40 °F is printed as 5 °C, on the safe side.
    const fahrenheit = [55, 50, 45, 40]
    const kept = [11.9, 12.1, 36.1, 72.1].map(inches => leastKept(inches * 0.0254))
    kept.forEach((celsius, i) => {
      expect(Math.abs(celsius - (fahrenheit[i]! - 32) / 1.8)).toBeLessThan(0.6)
    })
    expect(kept).toEqual([...kept].sort((one, other) => other - one))
  })
  it('needs the heat that the steady balance says', () => {
    const { weather } = winter
    const need = heatingNeed(weather, 'insulated-blanket', 13, weather.first, weather.first + 3600)
    const h = 4 + 4 * ((weather.film[0]! - 2.8) / 3) + 5
    // closed form: difference over film and blanket in a row.
    expect(need).toBeCloseTo((13 - weather.air[0]!) / (1 / h + covers['insulated-blanket'].resistance), 9)
    expect(
      heatingNeed(
        summer.weather,
        'insulated-blanket',
        13,
        summer.weather.first,
        summer.weather.first + 86400,
      ),
    ).toBe(0)
  })
  it('warns where the weather ends before the wall is safe', () => {
    const safe = checkFrost('B3', plan.heat, undefined)
    expect(safe.verdict).toBe('warn')
  })
})

describe('wetting', () => {
  it('makes one round of both faces', () => {
    const heat = {
      ...plan.heat,
      rewettings: [
        { at: 10, side: 'left', water: 0.5 },
        { at: 10, side: 'right', water: 0.3 },
        { at: 5000, side: 'left', water: 0.4 },
      ],
    } as const
    const rounds = wettingRounds(heat, area, 0, 6000)
    // hand: 1.1·(0.5·12 + 0.3·10) = 9.9; 1.1·0.4·12 = 5.28.
    expect(rounds.map(round => [round.at, Number(round.litres.toFixed(6))])).toEqual([
      [10, 9.9],
      [5000, 5.28],
    ])
    expect(shortestRound(rounds)).toBe(4990)
    expect(shortestRound(rounds.slice(1))).toBeUndefined()
  })
})

describe('dryingAdvice', () => {
  it('rises with the index at the published thresholds', () => {
    expect([0.1, 0.3, 0.7, 1.2].map(rate => dryingAdvice(rate).level)).toEqual([
      'none',
      'watch',
      'protect',
      'stop',
    ])
    expect([0.25, 0.5, 1].map(rate => dryingAdvice(rate).level)).toEqual(['watch', 'protect', 'stop'])
  })
})
