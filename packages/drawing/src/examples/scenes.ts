import type { Drawing } from '../paper/index.js'
import { figure, paperSheet, type SheetWords } from '../paper/index.js'
import {
  drawDayClock,
  drawLayerPlan,
  drawLimits,
  drawMixFit,
  drawModeShape,
  drawSeason,
  drawSharedSite,
  drawStand,
  drawTimeHeight,
  drawTradeOff,
  drawWallElevation,
  drawWallHeat,
} from '../views/index.js'
import { awkwardPlan } from './awkward-plan.js'
import { smallSharing, smallTradeOff } from './small-choices.js'
import { smallHeat, smallMode, smallStand } from './small-heat.js'
import { smallMixFit } from './small-mix-fit.js'
import { halfOver, smallPlan, smallSay } from './small-plan.js'

const words: SheetWords = { job: 'Orchard pavilion', revision: 'C', date: '1 July 2026', number: '3 of 9' }
const wide = paperSheet('A3', 'landscape', words)
const small = paperSheet('A4', 'landscape', {
  ...words,
  notes: ['Screening values. A licensed engineer and the local authority decide.'],
})

/** Every kind of drawing once: gallery, goldens and examples of use. */
export const scenes: Readonly<Record<string, () => Drawing>> = {
  'layer-plan': () => drawLayerPlan(smallPlan(), 47, wide),
  'layer-plan-foot': () => drawLayerPlan(smallPlan(), 14, small),
  'elevation-south': () => drawWallElevation(smallPlan(), 'S', wide),
  'elevation-south-inside': () => drawWallElevation(smallPlan(), 'S', wide, { seenFrom: 'left' }),
  'elevation-west-crop': () =>
    drawWallElevation(smallPlan(), 'W', figure(120, 80, words), {
      seenFrom: 'left',
      along: [2.2, 3.8],
      calls: new Set(['N1']),
    }),
  'time-height': () => drawTimeHeight(smallPlan(), small, smallSay),
  'time-height-resumed': () => drawTimeHeight(halfOver(smallPlan()), small, smallSay),
  'day-clock': () => drawDayClock(smallPlan(), '2026-07-14', small),
  limits: () => {
    const plan = smallPlan()
    return drawLimits(
      { job: plan.job, lift: plan.campaign.days[1]!.lifts[1]!, hours: plan.campaign.hours, say: smallSay },
      small,
    )
  },
  season: () => {
    const plan = smallPlan()
    return drawSeason({ job: plan.job, hours: plan.campaign.hours }, figure(170, 70, words))
  },
  'wall-heat': () => drawWallHeat(smallHeat(smallPlan(), 0), small),
  stand: () => drawStand(smallStand(smallPlan(), 0), small),
  'mix-fit': () => drawMixFit({ job: smallPlan().job, fit: smallMixFit() }, small),
  'mode-shape': () =>
    drawModeShape(
      { job: smallPlan().job, lift: smallPlan().campaign.days[0]!.lifts[0]!, buckling: smallMode() },
      small,
    ),
  'elevation-many': () =>
    drawWallElevation(awkwardPlan(), 'S', { ...wide, words: { ...words, job: awkwardPlan().job.name } }),
  'layer-plan-many': () =>
    drawLayerPlan(awkwardPlan(), 14, { ...small, words: { ...words, job: awkwardPlan().job.name } }),
  'trade-off': () => drawTradeOff(smallTradeOff, small),
  'shared-site': () => drawSharedSite(smallSharing, small),
}
