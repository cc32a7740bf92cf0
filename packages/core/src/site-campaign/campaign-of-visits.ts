import { type Campaign, leastCampaign, type PrintDay } from '../campaign/index.js'
import {
  type Building,
  type SiteCampaign,
  type SiteInput,
  timeLeft,
  type Visit,
  withLifts,
} from './site-campaign.js'

/** Visits told as a campaign of the site and of each building. */
export function campaignOfVisits(site: SiteInput, visits: readonly Visit[]): SiteCampaign {
  const byBuilding = site.buildings.map(building => ({
    building: building.name,
    campaign: buildingCampaign(
      building,
      visits.filter(visit => visit.building === building.name),
    ),
  }))
  const last = visits.at(-1)
  return {
    visits,
    byBuilding,
    finished: byBuilding.every(({ campaign }) => campaign.finished),
    finish: last?.lifts.at(-1)?.end ?? 0,
    finishDate: last?.date ?? '',
    moves: visits.filter(visit => visit.moveStart !== undefined).length,
  }
}

/** Days between a building's visits are days at another one: no limit keeps them idle. */
function buildingCampaign(building: Building, visits: readonly Visit[]): Campaign {
  const { input } = building
  const days = visits.map(
    ({ date, start, end, lifts }, i): PrintDay => ({
      date,
      number: i + 1,
      start,
      end,
      lifts,
      chilled: isChilled(building, lifts),
    }),
  )
  const standing = visits.reduce((sum, visit) => withLifts(sum, visit.lifts), input.standing ?? [])
  const least = leastCampaign(input)
  return {
    days,
    idleDays: [],
    finished: timeLeft(building, standing) <= 0,
    finish: visits.at(-1)?.lifts.at(-1)?.end ?? 0,
    hours: input.hours,
    bound: {
      days: least.printDays,
      how: 'the building alone',
      ...(least.date === undefined ? {} : { date: least.date }),
    },
  }
}

/** Whether any lift lies in an hour whose mix is too warm without a chiller. */
const isChilled = ({ input }: Building, lifts: Visit['lifts']): boolean =>
  input.hours.some(hour => {
    const warmest = hour.limits.find(limit => limit.kind === 'mix-hot')?.capacity
    return (
      warmest !== undefined &&
      hour.mixTemperature > warmest &&
      lifts.some(lift => lift.start < hour.start + 3600 && lift.end > hour.start)
    )
  })
