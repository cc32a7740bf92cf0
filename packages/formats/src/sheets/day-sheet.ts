import type { Lift } from '@dawnlift/core/campaign'
import { clockText, localTime } from '@dawnlift/core/clock'
import type { Plan } from '@dawnlift/core/plan'
import type { Instant } from '@dawnlift/core/quantity'
import { assert } from '@dawnlift/core/result'
import type { Call } from '@dawnlift/core/trade'
import { crewHeat, type PrintHour } from '@dawnlift/core/weather'
import { figure, fullDayText, lengthText, temperatureText, toSvg, volumeText } from '@dawnlift/drawing/paper'
import { drawDayClock } from '@dawnlift/drawing/views'
import { engineerWords, liftingCaution, pourCaution, standingCautions } from './cautions.js'
import { cureLines } from './cure-lines.js'
import { poursOn } from './pour-rows.js'
import { gainWords, type SheetOptions, sourceText, stopWords } from './sheet-options.js'
import { typeset } from './typeset.js'

/** The crew's page for one print day. */
export const daySheet = (plan: Plan, date: string, options: SheetOptions): Uint8Array =>
  typeset('day-sheet', { days: [dayData(plan, date, options)] })

/** All print days as one document, a day a page. */
export const daySheets = (plan: Plan, options: SheetOptions): Uint8Array =>
  typeset('day-sheet', { days: plan.campaign.days.map(day => dayData(plan, day.date, options)) })

/** Everything on the page, in words: the template only sets it. */
export function dayData(plan: Plan, date: string, options: SheetOptions) {
  const { job, campaign } = plan
  const day = campaign.days.find(candidate => candidate.date === date)
  assert(day, `${date} is a print day`)
  const zone = job.site.timeZone
  const clock = (at: number) => clockText(at, zone)
  const calls = plan.calls.filter(call => call.date === date)
  const steps = plan.cure.flatMap(lift => lift.steps)
  return {
    job: job.name,
    site: job.site.name,
    revision: job.revision,
    made: options.date,
    title: fullDayText(date),
    number: day.number,
    of: campaign.days.length,
    from: clock(day.start),
    until: clock(day.end),
    crew: job.crew.size,
    zone,
    units: { drying: job.units === 'metric' ? 'kg/m²h' : 'lb/ft²h' },
    clock: toSvg(
      drawDayClock(plan, date, figure(86, 86, { job: job.name, revision: job.revision, date: options.date })),
    ),
    lifts: day.lifts.map(lift => liftRow(plan, lift, options)),
    hours: hourRows(plan, day.start, day.end, day.chilled),
    water: waterWords(plan, day.lifts, day.chilled),
    calls: calls.map(call => callRow(plan, call)),
    tools: toolRows(calls),
    pours: poursOn(plan, date),
    pourCaution,
    cure: [...cureLines(job, steps, date), ...(options.cureOf?.(date) ?? [])],
    material: materialOf(plan, date),
    cautions: [
      ...(options.cautionsOf?.(date) ?? []),
      ...heatCaution(plan, day.start, day.end),
      ...standingCautions(job),
      ...(calls.some(call => call.what === 'lintel') ? [liftingCaution] : []),
      ...(calls.some(call => call.what === 'pour') ? [pourCaution] : []),
    ],
    engineer: engineerWords,
  }
}

function liftRow(plan: Plan, lift: Lift, options: SheetOptions) {
  const { job } = plan
  const zone = job.site.timeZone
  const h = job.print.layerHeight
  const index = plan.sections.findIndex(section => section.id === lift.section)
  return {
    id: lift.id,
    tint: index < 0 ? 0 : index % 6,
    from: clockText(lift.start, zone),
    until: clockText(lift.end, zone),
    layers: `${lift.firstLayer}–${lift.lastLayer}`,
    height: `${lengthText((lift.firstLayer - 1) * h, job.units)} → ${lengthText(lift.lastLayer * h, job.units)}`,
    layerTime: `${Math.round((lift.end - lift.start) / (lift.lastLayer - lift.firstLayer + 1))} s a layer`,
    stops: stopWords(plan, options, lift),
    gain: gainWords(plan, options, lift),
    safety: lift.safety.toFixed(2),
    pause:
      lift.pauseBudget >= 60
        ? `${Math.floor(lift.pauseBudget / 60)} min before a cold joint`
        : 'none: any stop makes a cold joint',
    holds: holdWords(lift),
  }
}

/** Holds of one length after one layer in one breath. */
function holdWords({ holds }: Lift): readonly string[] {
  const alike = new Map<string, readonly string[]>()
  for (const { afterLayer, duration, reason, ref } of holds) {
    const key = `after layer ${afterLayer}: ${Math.round(duration / 60)} min for ${reason}`
    alike.set(key, [...(alike.get(key) ?? []), ref])
  }
  return [...alike].map(([key, refs]) => `${key} ${refs.length > 1 ? 'each ' : ''}${refs.join(', ')}`)
}

/** Hours from the one before set-up to the one after wash-out, at most sixteen. */
function hourRows({ job, campaign }: Plan, start: number, end: number, chilled: boolean) {
  const zone = job.site.timeZone
  return campaign.hours
    .filter(hour => hour.start > start - 7200 && hour.start < end + 3600)
    .slice(0, 16)
    .map(hour => ({
      clock: clockText(hour.start, zone),
      air: temperatureText(hour.weather.air, job.units),
      mix: temperatureText(mixOf(hour, chilled), job.units),
      water: hour.waterNeeded === undefined ? '–' : temperatureText(hour.waterNeeded, job.units),
      wind: speedText(hour.weather.wind, job.units),
      gust: speedText(hour.weather.gust, job.units),
      drying: (hour.evaporation * (job.units === 'metric' ? 1 : 0.204816)).toFixed(2),
      heat: temperatureText(hour.wbgt, job.units),
      open: hour.open,
      shut:
        hour.limits
          .filter(limit => limit.demand > limit.capacity)
          .map(limit => limit.kind.replaceAll('-', ' '))[0] ?? '',
    }))
}

const mixOf = (hour: PrintHour, chilled: boolean): number =>
  chilled ? (hour.mixTemperatureChilled ?? hour.mixTemperature) : hour.mixTemperature

const speedText = (speed: number, units: 'metric' | 'imperial'): string =>
  units === 'metric' ? `${(speed * 3.6).toFixed(0)} km/h` : `${(speed * 2.23694).toFixed(0)} mph`

/** How cold the water has to be at the hottest hour that prints. */
function waterWords({ job, campaign }: Plan, lifts: readonly Lift[], chilled: boolean): string {
  const printing = campaign.hours.filter(hour =>
    lifts.some(lift => hour.start + 3600 > lift.start && hour.start < lift.end),
  )
  const needed = printing.flatMap(hour =>
    hour.waterNeeded === undefined ? [] : [{ hour, water: hour.waterNeeded }],
  )
  const coldest = needed.sort((a, b) => a.water - b.water)[0]
  const tap = temperatureText(job.batching.waterTemperature, job.units)
  const most = temperatureText(job.rules.mixTemperatureMost.value, job.units)
  const measure = 'Measure the mix at the nozzle every hour.'
  if (!coldest) return `Tap water is at ${tap}; the mix may be at most ${most} at the nozzle. ${measure}`
  const when = clockText(coldest.hour.start, job.site.timeZone)
  const neededText = temperatureText(coldest.water, job.units)
  if (coldest.water >= job.batching.waterTemperature)
    return `Tap water at ${tap} is cold enough all day: for a mix of ${most} at the nozzle it may be up to ${neededText} at ${when}. ${measure}`
  const chiller = chilled ? 'Chiller on' : 'No chiller is planned'
  return `${chiller}: tap water is at ${tap}, and at ${when} it may be at most ${neededText} for a mix of ${most} at the nozzle. ${measure}`
}

export function callRow({ job }: Plan, call: Call) {
  const zone = job.site.timeZone
  const wall = job.walls.find(candidate => candidate.id === call.wall)
  return {
    id: call.id,
    from: clockText(call.from, zone),
    until: clockText(call.until, zone),
    overnight: localTime(call.from, zone).date !== localTime(call.until, zone).date,
    cut: cutWords(call),
    steps: call.cutInSteps === true,
    trade: call.trade,
    what: call.what,
    wall: wall?.name ?? call.wall,
    lift: call.lift,
    layers: call.layerIn === call.layerOut ? `${call.layerIn}` : `${call.layerIn}–${call.layerOut}`,
    layerWord: call.layerIn === call.layerOut ? 'layer' : 'layers',
    along: lengthText(call.place.along, job.units),
    corner: call.place.from,
    up: lengthText(call.place.up, job.units),
    face: call.place.face,
    tool: call.tellBy === undefined ? call.tool : `${call.tool}; told by ${momentWords(call.tellBy, zone)}`,
    proof: call.proof,
  }
}

const momentWords = (at: Instant, zone: string): string =>
  `${localTime(at, zone).date} ${clockText(at, zone)}`

/** What to bring and when it is done, once for all calls that share it. */
function toolRows(calls: readonly Call[]) {
  const shared = new Map<string, readonly Call[]>()
  for (const call of calls) {
    const key = `${call.tool}\n${call.proof}`
    shared.set(key, [...(shared.get(key) ?? []), call])
  }
  return [...shared.values()].map(same => ({
    what: [...new Set(same.map(call => `${call.trade}, ${call.what}`))].join('; '),
    calls: same.map(call => call.id).join(' '),
    tool: same[0]?.tool ?? '',
    proof: same[0]?.proof ?? '',
  }))
}

function materialOf({ job, tally }: Plan, date: string) {
  const day = tally.byDay.find(candidate => candidate.date === date)
  if (!day) return []
  const metric = job.units === 'metric'
  const mass = (kilograms: number) =>
    metric ? `${(kilograms / 1000).toFixed(2)} t` : `${(kilograms * 2.204623).toFixed(0)} lb`
  return [
    ['bead', lengthText(day.beadLength, job.units)],
    ['in the wall', volumeText(day.volume, job.units)],
    [
      'bags, hose waste included',
      `${day.bags} × ${metric ? `${job.mix.bag} kg` : `${(job.mix.bag * 2.204623).toFixed(0)} lb`}`,
    ],
    ['dry material', mass(day.dry)],
    ['water', metric ? `${day.water.toFixed(0)} L` : `${(day.water * 0.264172).toFixed(0)} gal`],
  ]
}

/** The hottest hour of the shift, next to what to do about it. */
function heatCaution({ job, campaign }: Plan, start: number, end: number): string[] {
  const shift = campaign.hours.filter(hour => hour.start + 3600 > start && hour.start < end)
  const hottest = [...shift].sort((a, b) => b.wbgt - a.wbgt)[0]
  if (!hottest) return []
  const crew = (hour: PrintHour) =>
    crewHeat({ wbgt: hour.wbgt, air: hour.weather.air, wind: hour.weather.wind }, 'moderate', true, job.units)
  const coldest = [...shift].sort((a, b) => crew(a).windChill - crew(b).windChill)[0] ?? hottest
  const screened = [crew(hottest), crew(coldest)].flatMap(({ caution }) =>
    caution ? [`${caution.say} (${caution.source})`] : [],
  )
  return [
    ...new Set(screened),
    `Heat: WBGT ${temperatureText(hottest.wbgt, job.units)} at ${clockText(hottest.start, job.site.timeZone)}, job limit ${temperatureText(job.rules.wbgtMost.value, job.units)} (${sourceText(job.rules.wbgtMost.source)}). Shade, water, rests as local rules say; new people less.`,
  ]
}

function cutWords({ cut, cutDoubt, cutInSteps }: Call): string {
  if (cutDoubt === 'none') return 'no moment for a clean cut: ask the lead'
  const how = cutInSteps ? 'cut upwards in steps, pump stopped' : cut ? 'cut while soft' : ''
  return cutDoubt === 'unsure' ? `${how}; try with a knife first` : how
}
