import type { RuleValue } from '@dawnlift/core/job'
import { sayQuantity } from '@dawnlift/core/limit'
import type { Plan } from '@dawnlift/core/plan'
import { formatQuantity } from '@dawnlift/core/quantity'
import {
  areaText,
  type Drawing,
  fullDayText,
  lengthText,
  paperSheet,
  type Sheet,
  toSvg,
  volumeText,
} from '@dawnlift/drawing/paper'
import { drawLayerPlan, drawMixFit, drawTimeHeight, drawWallElevation } from '@dawnlift/drawing/views'
import { engineerWords, liftingCaution, pourCaution, standingCautions } from './cautions.js'
import { liftHeat, liftStanding, tellingLifts } from './lift-drawings.js'
import { pourRows } from './pour-rows.js'
import { type SheetOptions, sayerOf, sourceText } from './sheet-options.js'
import { strengthText } from './strength-text.js'
import { typeset } from './typeset.js'

/** What the authority and the engineer get: summary, method, mix, limits with their sources, cautions, drawings. */
export const permitPackage = (plan: Plan, options: SheetOptions): Uint8Array =>
  typeset('permit-package', permitData(plan, options))

export function permitData(plan: Plan, options: SheetOptions) {
  const { job, campaign, tally } = plan
  const say = sayerOf(plan, options)
  const length = (metres: number) => lengthText(metres, job.units)
  return {
    job: job.name,
    site: job.site.name,
    revision: job.revision,
    made: options.date,
    summary: [
      [
        'walls',
        `${job.walls.length}, up to ${length(Math.max(...job.walls.map(wall => wall.top)))} over the slab`,
      ],
      ['wall face', `${areaText(tally.wallFace, job.units)}, one face, openings taken off`],
      ['bead', `${length(job.print.beadWidth)} wide, ${length(job.print.layerHeight)} high`],
      ['print days', `${campaign.days.length}${campaign.finished ? '' : ', not finished: see findings'}`],
      [
        'first and last day',
        `${fullDayText(campaign.days[0]?.date ?? job.calendar.firstDay)} – ${fullDayText(campaign.days.at(-1)?.date ?? job.calendar.firstDay)}`,
      ],
      ['printed volume', volumeText(tally.total.volume, job.units)],
      [
        'openings, lintels, columns',
        `${job.openings.length}, ${job.openings.filter(o => o.lintel).length}, ${job.columns.length}`,
      ],
    ],
    mix: [
      ['name', job.mix.name],
      [
        'model from',
        job.mix.provenance === 'default'
          ? 'defaults, no tests of this mix: to be tested before printing'
          : job.mix.provenance,
      ],
      ['density', formatQuantity(job.mix.density, 'density', job.units)],
      ['water per dry material', `${Number(job.mix.waterRatio.toPrecision(3))} by mass`],
      ['tested to an age of', `${(job.mix.testedTo / 3600).toFixed(1)} h`],
      [
        'planning uses',
        `the lower band: a ${(job.mix.lowerProbability * 100).toFixed(0)} % chance that the mix does worse`,
      ],
      [
        'strength the model ends at',
        `${strengthText(job.mix.strength.ultimate, job.units)}, to be shown by cylinders or cores`,
      ],
    ],
    limits: limitRows(plan),
    lifts: campaign.days.flatMap(day =>
      day.lifts.map(lift => [
        lift.id,
        fullDayText(day.date),
        `${lift.firstLayer}–${lift.lastLayer}`,
        length((lift.lastLayer - lift.firstLayer + 1) * job.print.layerHeight),
        lift.safety.toFixed(2),
        say(lift.binding),
      ]),
    ),
    pours: pourRows(plan),
    pourCaution,
    findings: findingRows(plan),
    cautions: [...standingCautions(job), liftingCaution, pourCaution],
    engineer: engineerWords,
    drawings: drawings(plan, options).map(drawing => ({
      picture: toSvg(drawing),
      width: drawing.width,
      height: drawing.height,
    })),
  }
}

/** The job's rules as it sets them, each with where it comes from. */
function limitRows({ job: { rules, units } }: Plan): readonly (readonly [string, string, string])[] {
  const row = (
    what: string,
    unit: string,
    ...limits: readonly RuleValue[]
  ): readonly [string, string, string] => [
    what,
    limits.map(limit => sayQuantity(limit.value, unit, units)).join(', '),
    [...new Set(limits.map(limit => sourceText(limit.source)))].join('; '),
  ]
  return [
    row('tallest lift by rule', 'm', rules.liftHeight),
    row('shortest cure between lifts of one section', 's', rules.overnightCure),
    row('mix at the nozzle, least and most', '°C', rules.mixTemperatureLeast, rules.mixTemperatureMost),
    row('air at least', '°C', rules.airTemperatureLeast),
    row('drying of the fresh bead', 'kg/m²h', rules.evaporationMost),
    row(`wind, gusts (${units === 'metric' ? '10 m' : "33'"} up)`, 'm/s', rules.windMost, rules.gustMost),
    row('rain', 'mm/h', rules.rainMost),
    row('heat on the crew, WBGT', '°C', rules.wbgtMost),
    row('factor on standing height', '', rules.standSafety),
    row('imperfection factor on buckling', '', rules.imperfection),
    row('longest a layer may lie bare', 's', rules.restMost),
  ]
}

/** What the checks found, each sentence once. */
const findingRows = (plan: Plan) =>
  [...new Map(plan.findings.filter(f => f.verdict !== 'pass').map(f => [f.say, f])).values()].map(f => ({
    verdict: f.verdict,
    say: f.say,
    source: sourceText(f.source),
  }))

/** Plans of the bands, elevations, the campaign, the lift nearest to falling, the hottest one, and the mix tests. */
function drawings(plan: Plan, options: SheetOptions): readonly Drawing[] {
  const words = {
    job: plan.job.name,
    revision: plan.job.revision,
    date: options.date,
    notes: [engineerWords],
  }
  const bands = [...new Set(plan.bands.flatMap(section => section.bands.map(band => band.fromLayer)))].sort(
    (a, b) => a - b,
  )
  const most = 12
  const chosen =
    bands.length <= most ? bands : bands.filter((_, index) => index % Math.ceil(bands.length / most) === 0)
  const { weakest, hottest } = tellingLifts(plan)
  const { mixFit } = options
  const makers: ((sheet: Sheet) => Drawing)[] = [
    ...chosen.map(number => (sheet: Sheet) => drawLayerPlan(plan, number, sheet)),
    ...plan.job.walls.map(wall => (sheet: Sheet) => drawWallElevation(plan, wall.id, sheet)),
    sheet => drawTimeHeight(plan, sheet, sayerOf(plan, options)),
    ...(weakest ? [(sheet: Sheet) => liftStanding(plan, weakest, sheet)] : []),
    ...(hottest ? [(sheet: Sheet) => liftHeat(plan, hottest, sheet)] : []),
    ...(mixFit ? [(sheet: Sheet) => drawMixFit({ job: plan.job, fit: mixFit }, sheet)] : []),
  ]
  return makers.map((make, index) =>
    make(paperSheet('A4', 'landscape', { ...words, number: `${index + 1} of ${makers.length}` })),
  )
}
