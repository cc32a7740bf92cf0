import type { Limit } from '@dawnlift/core/limit'
import type { Plan } from '@dawnlift/core/plan'
import { layerRouteOf, layerTime, startsOf } from '@dawnlift/core/route'
import type { Quantities } from '@dawnlift/core/tally'
import { findingReport, snapReport } from './finding-report.js'
import { cureReport, pourReport } from './keeping-report.js'
import { liftReport } from './lift-report.js'
import { limitReport } from './limit-report.js'
import { momentText } from './moment-text.js'
import type { PlanReport } from './report-schema.js'

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
      start: momentText(start),
      end: momentText(end),
      chilledWater: chilled,
      lifts: lifts.map(lift => liftReport(lift, plan)),
    })),
    idleDays: campaign.idleDays.map(({ date, why }) => ({ date, why: say(why) })),
    calls: plan.calls.map(({ cut, place, from, until, tellBy, ...call }) => ({
      ...call,
      from: momentText(from),
      until: momentText(until),
      ...(tellBy === undefined ? {} : { tellBy: momentText(tellBy) }),
      ...(cut ? { cutFrom: momentText(cut.from), cutUntil: momentText(cut.until) } : {}),
      measuredFrom: place.from,
      along_m: place.along,
      up_m: place.up,
      face: place.face,
    })),
    cure: plan.cure.map(cureReport),
    pours: plan.pours.map(pourReport),
    tally: tallyReport(plan),
    movedToLayers: plan.snaps.map(snapReport),
    findings: plan.findings.map(findingReport),
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
