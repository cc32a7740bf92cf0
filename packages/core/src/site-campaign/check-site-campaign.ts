import { checkCampaign } from '../campaign/index.js'
import { addDays, instantAt, localTime } from '../clock/index.js'
import type { Units } from '../limit/index.js'
import type { Finding } from '../result/index.js'
import type { SiteCampaign, SiteInput, Visit } from './site-campaign.js'

const SLACK = 5e-3

/**
 * Proves a site's campaign from its clock times alone: each building keeps its own rules, machine and crew are in one place at a time,
 * moves are really there, and no shift is longer than the crew's. No findings: it is safe and workable as far as the input tells.
 */
export function checkSiteCampaign(
  site: SiteInput,
  campaign: SiteCampaign,
  units: Units = 'metric',
): readonly Finding[] {
  return [
    ...site.buildings.flatMap(({ name, input }) => {
      const own = campaign.byBuilding.find(each => each.building === name)
      if (!own)
        return [fault('building', name, 1, 0, 'campaigns', `Building ${name} has no campaign of its own.`)]
      return checkCampaign(input, own.campaign, units).map(finding => ({
        ...finding,
        at: `${name}: ${finding.at}`,
      }))
    }),
    ...checkTold(site, campaign),
    ...checkMoves(site, campaign.visits),
    ...checkShifts(site, campaign.visits),
  ]
}

const fault = (
  check: string,
  at: string,
  demand: number,
  capacity: number,
  unit: string,
  say: string,
): Finding => ({
  check: `site/${check}`,
  at,
  demand,
  capacity,
  unit,
  source: 'the site',
  verdict: 'fail',
  say,
})

/** Visits and the buildings' own days tell the same; a finished site has every layer. */
function checkTold(site: SiteInput, campaign: SiteCampaign): readonly Finding[] {
  const findings: Finding[] = []
  for (const { building, campaign: own } of campaign.byBuilding) {
    const visited = campaign.visits.filter(visit => visit.building === building).flatMap(visit => visit.lifts)
    const told = own.days.flatMap(day => day.lifts)
    if (visited.length !== told.length || visited.some((lift, i) => lift.start !== told[i]!.start)) {
      const say = `The visits to ${building} hold ${visited.length} lifts; its own campaign holds ${told.length}.`
      findings.push(fault('told', building, visited.length, told.length, 'lifts', say))
    }
    const layers = site.buildings
      .find(each => each.name === building)!
      .input.work.reduce((sum, work) => sum + work.printTimes.length, 0)
    const standing = site.buildings
      .find(each => each.name === building)!
      .input.standing?.reduce((sum, one) => sum + one.layers, 0)
    const printed = visited.reduce((sum, lift) => sum + lift.lastLayer - lift.firstLayer + 1, standing ?? 0)
    if (campaign.finished && printed !== layers) {
      const say = `Building ${building} has ${printed} of ${layers} layers in a campaign called finished.`
      findings.push(fault('finished', building, printed, layers, 'layers', say))
    }
  }
  return findings
}

/** One machine: visits follow one another, with a move in the crew's time wherever the building changes. */
function checkMoves(site: SiteInput, visits: readonly Visit[]): readonly Finding[] {
  const { move } = site
  return visits.flatMap((visit, i) => {
    const before = visits[i - 1]
    if (!before) return []
    const at = `${visit.building} ${visit.date}`
    if (before.building === visit.building) {
      const say = `${visit.building} is set up ${Math.round(before.end - visit.start)} s before its wash-out of ${before.date}.`
      return visit.start < before.end - SLACK ? [fault('move', at, before.end, visit.start, 's', say)] : []
    }
    const from = visit.moveStart
    if (from === undefined || from < before.end - SLACK || from + move > visit.start + SLACK) {
      const gap = visit.start - before.end
      const say = `Set-up at ${at} begins ${Math.round(gap)} s after wash-out at ${before.building}; no move of ${move} s is told between.`
      return [fault('move', at, move, gap, 's', say)]
    }
    const day = crewDayOf(site, localTime(from, site.buildings[0]!.input.timeZone).date)
    const isInDay = from >= day.opens - SLACK && from + move <= day.closes + SLACK
    const say = `The move to ${at} begins at ${from}, outside the crew’s day.`
    return isInDay || before.date === visit.date ? [] : [fault('move', at, from, day.opens, 's', say)]
  })
}

function crewDayOf(site: SiteInput, date: string): { readonly opens: number; readonly closes: number } {
  const { crew, timeZone } = site.buildings[0]!.input
  const last = crew.dayEnd > crew.dayStart ? date : addDays(date, 1)
  return { opens: instantAt(date, crew.dayStart, timeZone), closes: instantAt(last, crew.dayEnd, timeZone) }
}

/** One crew: from the first move or set-up of its day to the last wash-out, within day and shift. */
function checkShifts(site: SiteInput, visits: readonly Visit[]): readonly Finding[] {
  const { longestShift } = site.buildings[0]!.input.crew
  return [...new Set(visits.map(visit => visit.date))].flatMap(date => {
    const own = visits.filter(visit => visit.date === date)
    const { opens, closes } = crewDayOf(site, date)
    // A move on a day before belongs to that day's shift.
    const moves = own.flatMap(visit => visit.moveStart ?? []).filter(from => from >= opens - SLACK)
    const begins = Math.min(...own.map(visit => visit.start), ...moves)
    const ends = Math.max(...own.map(visit => visit.end))
    const findings: Finding[] = []
    if (ends - begins > longestShift + SLACK) {
      const say = `The crew is at work for ${ends - begins} s on ${date}; ${longestShift} s is the longest.`
      findings.push(fault('shift', date, ends - begins, longestShift, 's', say))
    }
    if (begins < opens - SLACK || ends > closes + SLACK) {
      const say = `The crew’s day of ${date} runs from ${opens} to ${closes}; it would work from ${begins} to ${ends}.`
      findings.push(fault('day', date, ends, closes, 's', say))
    }
    return findings
  })
}
