import type { Campaign, Lift } from '../campaign/index.js'
import type { Job } from '../job/index.js'
import type { Laying } from '../machine/index.js'
import { type CubicMetres, formatQuantity } from '../quantity/index.js'
import { assert } from '../result/index.js'
import { wallFace } from './areas.js'
import { costLines } from './cost-lines.js'
import { hoseVolume, splitMix } from './hose.js'
import type { Quantities, Tally } from './tally.js'

/**
 * Quantities by lift and day, and what they cost.
 * A lift's numbers are what lies in the wall. A day's `dry`, `bags` and `water` also hold what is washed out of the hose,
 * because that has to be on site; its bags are whole bags. The total is the sum of the days.
 */
export function tallyOf({ job, campaign }: { readonly job: Job; readonly campaign: Campaign }): Tally {
  const byLift = campaign.days.flatMap(day =>
    day.lifts.map(lift => ({ lift: lift.id, date: day.date, ...liftQuantities(job, lift) })),
  )
  const hose = hoseVolume(job.batching.hoseDiameter, job.batching.hoseLength)
  const byDay = campaign.days.map(day => ({
    date: day.date,
    ...dayQuantities(
      job,
      day.lifts.map(lift => liftQuantities(job, lift)),
      hose,
    ),
  }))
  const total = sumQuantities(byDay)
  const lines = costLines(job, campaign, total)
  const cost = lines.reduce((sum, line) => sum + line.amount, 0)
  const face = wallFace(job)
  assert(Number.isFinite(cost), 'every cost line is a number')
  assert(face > 0, 'a tallied job has wall face')
  return {
    total,
    byLift,
    byDay,
    wallFace: face,
    cost: { currency: job.costs.currency, lines, total: cost, perWallFace: cost / face },
    waste: {
      volume: hose * campaign.days.length,
      how: `${hoseWords(job, hose)} washed out on ${campaign.days.length} print days; trial beads are not counted${trialWords(job.machine.laying)}`,
    },
  }
}

/** What trials of the machine add to the beads as drawn, so that bags that differ from them can be understood. */
function trialWords(laying: Laying | undefined): string {
  if (!laying) return ''
  const counted = [
    ...(laying.fill === undefined ? [] : [`${(100 * laying.fill).toFixed(1)} % of the flow becomes bead`]),
    ...(laying.swelling ? ['corners and ramps where the nozzle is slow'] : []),
    ...(laying.lags ? ['flow before starts less flow after stops'] : []),
  ]
  return `; volumes are what is pumped, by your trials: ${counted.join(', ')}`
}

/** What the hose holds, and of what size it is. */
function hoseWords({ units, batching }: Job, volume: CubicMetres): string {
  const held = formatQuantity(volume, 'volume', units, { unit: units === 'metric' ? 'L' : 'gal', step: 0.1 })
  const [length, bore] = [batching.hoseLength, batching.hoseDiameter].map(each =>
    formatQuantity(each, 'length', units),
  )
  return `${held} in the hose (${length} × ${bore})`
}

function liftQuantities(job: Job, lift: Lift): Quantities {
  const mass = lift.volume * job.mix.density
  const { dry, water } = splitMix(mass, job.mix.waterRatio)
  // Holds on top of the lift, or worked off before it starts, lie outside its clock.
  const held = lift.holds
    .filter(({ afterLayer }) => afterLayer >= lift.firstLayer && afterLayer < lift.lastLayer)
    .reduce((sum, hold) => sum + hold.duration, 0)
  return {
    beadLength: lift.length,
    volume: lift.volume,
    mass,
    dry,
    bags: dry / job.mix.bag,
    water,
    printTime: lift.end - lift.start - held,
  }
}

function dayQuantities(job: Job, lifts: readonly Quantities[], hose: number): Quantities {
  const printed = sumQuantities(lifts)
  const lost = splitMix(hose * job.mix.density, job.mix.waterRatio)
  const dry = printed.dry + lost.dry
  // A rounding error of a grain must not order a bag.
  const bags = Math.ceil(dry / job.mix.bag - 1e-9)
  return { ...printed, dry, bags, water: printed.water + lost.water }
}

const nothing: Quantities = { beadLength: 0, volume: 0, mass: 0, dry: 0, bags: 0, water: 0, printTime: 0 }

const sumQuantities = (parts: readonly Quantities[]): Quantities =>
  parts.reduce(
    (sum, part) => ({
      beadLength: sum.beadLength + part.beadLength,
      volume: sum.volume + part.volume,
      mass: sum.mass + part.mass,
      dry: sum.dry + part.dry,
      bags: sum.bags + part.bags,
      water: sum.water + part.water,
      printTime: sum.printTime + part.printTime,
    }),
    nothing,
  )
