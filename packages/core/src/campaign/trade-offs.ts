import type { Aim } from '../job/index.js'
import type { Seconds } from '../quantity/index.js'
import { weightsOf } from './aim.js'
import type { Campaign } from './campaign.js'
import type { CampaignInput } from './campaign-input.js'
import { findSoonest } from './find-campaign.js'
import { prepareGround, standAtStart } from './ground.js'
import { prepareBounds } from './lower-bound.js'
import { campaignOf } from './schedule-campaign.js'
import { NEVER } from './section-clock.js'
import { settledCampaigns } from './settled-campaigns.js'

/** One way to plan the job, really planned. */
export interface TradeOff {
  /** What it was looked for by, the first of those that led to it. */
  readonly aim: Aim
  readonly foundBy: readonly Aim[]
  readonly campaign: Campaign
  /** Local date on which the walls are up. */
  readonly date: string
  readonly cost: number
  readonly printDays: number
  readonly lifts: number
  readonly siteTime: Seconds
  /** Least safety on standing of any lift. */
  readonly safety: number
  /** No other one is sooner or as soon, as cheap, in as few lifts and as safe, and better in one of them. */
  readonly isWorthwhile: boolean
}

/**
 * What waiting buys: the soonest campaign, and the cheapest and the calmest ones that are up as soon or a few working days
 * later, soonest first. Empty if the job does not get up in the weather known. `costOf` prices a campaign; `progress` hears
 * before each search how far it is.
 */
export function tradeOffs(
  input: CampaignInput,
  costOf: (campaign: Campaign) => number,
  progress: (share: number) => void = () => undefined,
): readonly TradeOff[] {
  progress(0)
  const ground = prepareGround({ ...input, aim: 'soonest' })
  const bounds = prepareBounds(ground)
  const start = standAtStart(ground)
  const soonest = findSoonest(ground, bounds, start, 'full')
  if (soonest.finish === NEVER) return []
  const settled = (aim: 'cheapest' | 'calmest', done: number) =>
    settledCampaigns(ground, bounds, start, soonest, weightsOf(input, aim), share =>
      progress(done + 0.45 * share),
    )
  const lookedFor = {
    soonest: [soonest],
    cheapest: settled('cheapest', 0.1),
    calmest: settled('calmest', 0.55),
  }
  const all = (['soonest', 'cheapest', 'calmest'] as const).flatMap(aim =>
    [...new Set(lookedFor[aim])].map(found =>
      told(aim, campaignOf(ground, bounds, start, found, 'brisk'), costOf),
    ),
  )
  return worthwhile(all)
}

function told(aim: Aim, campaign: Campaign, costOf: (campaign: Campaign) => number): Told {
  const lifts = campaign.days.flatMap(day => day.lifts)
  return {
    aim,
    campaign,
    date: campaign.days.at(-1)?.date ?? '',
    cost: costOf(campaign),
    printDays: campaign.days.length,
    lifts: lifts.length,
    siteTime: campaign.days.reduce((sum, day) => sum + day.end - day.start, 0),
    safety: Math.min(...lifts.map(lift => lift.safety)),
  }
}

type Told = Omit<TradeOff, 'isWorthwhile' | 'foundBy'>

/** Doubles left out; each marked by whether another one is at least as good in everything and better in something. */
function worthwhile(all: readonly Told[]): readonly TradeOff[] {
  const keyOf = (one: Told) => [one.date, one.cost.toFixed(2), one.lifts, one.safety.toFixed(3)].join()
  const single = all.filter((one, i) => all.findIndex(other => keyOf(other) === keyOf(one)) === i)
  return single
    .map(one => ({
      ...one,
      foundBy: [...new Set(all.filter(other => keyOf(other) === keyOf(one)).map(({ aim }) => aim))],
      isWorthwhile: !single.some(other => other !== one && isNoWorse(other, one)),
    }))
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : a.cost - b.cost))
}

const isNoWorse = (a: Told, b: Told): boolean =>
  a.date <= b.date && a.cost <= b.cost && a.lifts <= b.lifts && a.safety >= b.safety
