import type { Campaign } from '../campaign/index.js'
import type { Job } from '../job/index.js'
import { checkMixUse, equivalentAge, strengthAt } from '../mix/index.js'
import { type ColumnPour, jobPours } from '../pour/index.js'
import { checkPumping } from '../pump/index.js'
import type { Celsius } from '../quantity/index.js'
import type { Finding } from '../result/index.js'
import type { Section } from '../section/index.js'
import { beadArea } from '../wall/index.js'
import type { PrintHour } from '../weather/index.js'
import { hourAt } from './site-physics.js'

/** Columns are poured this long after the last lift of their section: common practice, no source. */
const pourAfter = 3 * 86_400

/** What the campaign asks of mix, pump and hose beyond what was tested or what they can do. */
export function checkSite(job: Job, campaign: Campaign): readonly Finding[] {
  const lifts = campaign.days.flatMap(day => day.lifts)
  if (lifts.length === 0) return []
  const mixes = lifts.flatMap(lift => lift.layerEnds.map(end => hourAt(campaign.hours, end).mixTemperature))
  const hottest = Math.max(...mixes)
  const oldest = Math.max(...lifts.map(lift => lift.end - lift.start))
  const top = Math.max(...lifts.map(lift => lift.lastLayer)) * job.print.layerHeight
  const area = beadArea(job.print.beadWidth, job.print.layerHeight)
  return [
    ...checkMixUse(job.mix, {
      at: job.mix.name,
      oldest: equivalentAge(oldest, hottest, job.mix),
      coldest: Math.min(...mixes),
      hottest,
      units: job.units,
    }),
    ...checkPumping({
      machine: job.machine,
      mix: job.mix,
      batching: job.batching,
      flow: area * job.print.speed,
      rise: top,
      temperature: hottest,
      units: job.units,
    }),
  ].filter(finding => finding.verdict !== 'pass')
}

/** Pours of all columns, into shells of the strength they have three days after the last lift beside them. */
export function columnPours(
  job: Job,
  sections: readonly Section[],
  campaign: Campaign,
): { readonly pours: readonly ColumnPour[]; readonly findings: readonly Finding[] } {
  const lifts = campaign.days.flatMap(day => day.lifts)
  return jobPours(job, id => {
    const column = job.columns.find(each => each.id === id)
    const section = sections.find(each =>
      each.stretches.some(
        ({ wall, from, to }) => wall === column?.wall && column.at >= from && column.at <= to,
      ),
    )
    const last = lifts.filter(lift => lift.section === section?.id).at(-1)
    // Nothing printed beside it: there is no shell to pour into.
    if (!last) return 0
    return strengthAt(
      job.mix.strength,
      equivalentAge(pourAfter, meanAir(campaign.hours, last.end, last.end + pourAfter), job.mix),
    )
  })
}

function meanAir(hours: readonly PrintHour[], from: number, until: number): Celsius {
  let [sum, count] = [0, 0]
  for (let at = from; at < until; at += 3600) {
    sum += hourAt(hours, at).weather.air
    count += 1
  }
  return sum / count
}
