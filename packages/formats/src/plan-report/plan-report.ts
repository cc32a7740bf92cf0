import { explainLift, type Lift } from '@dawnlift/core/campaign'
import { type Limit, sayLimit } from '@dawnlift/core/limit'
import type { Plan } from '@dawnlift/core/plan'
import type { Instant } from '@dawnlift/core/quantity'
import { layerRouteOf, layerTime, startsOf } from '@dawnlift/core/route'
import type { Quantities } from '@dawnlift/core/tally'
import { cureReport, pourReport } from './keeping-report.js'
import type { PlanReport } from './report-schema.js'

const moment = (at: Instant): string => new Date(Math.round(at * 1000)).toISOString()

/** The plan as other programs read it: moments as text, and the unit in every name. */
export function planReport(plan: Plan): PlanReport {
  const { job, campaign } = plan
  const say = (limit: Limit) => limitReport(limit, plan)
  return {
    format: 'dawnlift-plan',
    version: 1,
    job: { name: job.name, revision: job.revision, timeZone: job.site.timeZone, units: job.units },
    caution: 'Screening values. Confirm by test; local codes and a licensed engineer decide.',
    sections: sectionReports(plan),
    finished: campaign.finished,
    leastPrintDays: campaign.bound.days,
    leastBecause: campaign.bound.how,
    ...(campaign.bound.date === undefined ? {} : { earliestFinish: campaign.bound.date }),
    printDays: campaign.days.map(({ number, date, start, end, chilled, lifts }) => ({
      number,
      date,
      start: moment(start),
      end: moment(end),
      chilledWater: chilled,
      lifts: lifts.map(lift => liftReport(lift, plan)),
    })),
    idleDays: campaign.idleDays.map(({ date, why }) => ({ date, why: say(why) })),
    calls: plan.calls.map(({ cut, place, from, until, ...call }) => ({
      ...call,
      from: moment(from),
      until: moment(until),
      ...(cut ? { cutFrom: moment(cut.from), cutUntil: moment(cut.until) } : {}),
      measuredFrom: place.from,
      along_m: place.along,
      up_m: place.up,
      face: place.face,
    })),
    cure: plan.cure.map(cureReport),
    pours: plan.pours.map(pourReport),
    tally: tallyReport(plan),
    movedToLayers: plan.snaps.map(({ what, asked, got }) => ({ what, asked_m: asked, got_m: got })),
    findings: plan.findings.map(({ point, ...finding }) => ({
      ...finding,
      ...(point ? { x_m: point[0], y_m: point[1] } : {}),
    })),
  }
}

function sectionReports({ sections, bands, routes }: Plan): PlanReport['sections'] {
  return sections.map((section, index) => {
    const routed = routes[index]
    return {
      id: section.id,
      layers: bands[index]?.layers ?? 0,
      stretches: section.stretches.map(({ wall, from, to }) => ({ wall, from_m: from, to_m: to })),
      joints: section.joints.map(({ wall, at, kind, ref }) => ({ wall, at_m: at, kind, of: ref })),
      bands: (bands[index]?.bands ?? []).map(({ fromLayer, toLayer, bodyArea }) => {
        const route = routed ? layerRouteOf(routed, fromLayer) : undefined
        return {
          fromLayer,
          toLayer,
          bodyArea_m2: bodyArea,
          bead_m: route?.length ?? 0,
          layerTime_s: route ? layerTime(route) : 0,
          starts: route ? startsOf(route) : 0,
        }
      }),
    }
  })
}

function liftReport(lift: Lift, plan: Plan): PlanReport['printDays'][number]['lifts'][number] {
  const { units, site } = plan.job
  return {
    id: lift.id,
    section: lift.section,
    firstLayer: lift.firstLayer,
    lastLayer: lift.lastLayer,
    wishedLayers: lift.wishedLayers,
    start: moment(lift.start),
    end: moment(lift.end),
    layerEnds: lift.layerEnds.map(moment),
    bead_m: lift.length,
    volume_m3: lift.volume,
    standingSafety: lift.safety,
    pauseBudget_s: lift.pauseBudget,
    why: explainLift(lift, units, site.timeZone),
    binding: limitReport(lift.binding, plan),
    runnersUp: lift.runnersUp.map(({ limit, layers }) => ({ layers, limit: limitReport(limit, plan) })),
    ...(lift.nextGain
      ? {
          nextGain: {
            lever: lift.nextGain.lever,
            setting: lift.nextGain.setting,
            settingUnit: lift.nextGain.unit,
            layers: lift.nextGain.layers,
            days: lift.nextGain.days,
            bindsNext: limitReport(lift.nextGain.bindsNext, plan),
          },
        }
      : {}),
  }
}

const limitReport = (limit: Limit, { job }: Plan) => ({
  kind: limit.kind,
  say: sayLimit(limit, job.units, job.site.timeZone),
  ...(limit.at === undefined ? {} : { at: moment(limit.at) }),
  asked: limit.demand,
  allowed: limit.capacity,
  unit: limit.unit,
  source: limit.source,
})

const quantityReport = (quantities: Quantities) => ({
  bead_m: quantities.beadLength,
  volume_m3: quantities.volume,
  mass_kg: quantities.mass,
  dry_kg: quantities.dry,
  bags: quantities.bags,
  water_kg: quantities.water,
  printTime_s: quantities.printTime,
})

function tallyReport({ tally }: Plan): PlanReport['tally'] {
  return {
    ...quantityReport(tally.total),
    wallFace_m2: tally.wallFace,
    byLift: tally.byLift.map(each => ({ lift: each.lift, date: each.date, ...quantityReport(each) })),
    byDay: tally.byDay.map(each => ({ date: each.date, ...quantityReport(each) })),
    currency: tally.cost.currency,
    cost: tally.cost.lines.map(({ what, amount, how }) => ({ what, amount, how })),
    costTotal: tally.cost.total,
    costPerWallFace_perM2: tally.cost.perWallFace,
  }
}
