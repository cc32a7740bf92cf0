import type { Campaign } from '../campaign/index.js'
import type { Job } from '../job/index.js'
import { pouredVolume, wallFace } from './areas.js'
import type { Quantities, Tally } from './tally.js'

type CostLine = Tally['cost']['lines'][number]

/** Cost by the lead's own rates, each line with how it is computed. */
export function costLines(job: Job, campaign: Campaign, total: Quantities): readonly CostLine[] {
  const { costs, crew } = job
  const days = campaign.days.length
  const hours = campaign.days.reduce((sum, day) => sum + (day.end - day.start) / 3600, 0)
  const poured = pouredVolume(job)
  const faces = 2 * wallFace(job)
  const big = bigUnits[job.units]
  const lintels = job.openings.filter(opening => opening.lintel).length
  const line = (what: string, amount: number, how: string): CostLine => ({ what, amount, how })
  return [
    line('Mobilisation', costs.mobilisation, 'once'),
    line('Machine', days * costs.machinePerDay, `${days} print days × ${costs.machinePerDay}`),
    line(
      'Crew',
      hours * crew.size * costs.crewPerHour,
      `${hours.toFixed(1)} h set-up to wash-out × ${crew.size} people × ${costs.crewPerHour}`,
    ),
    line(
      'Material',
      (total.dry / 1000) * costs.materialPerTonne,
      times(total.dry / 1000, costs.materialPerTonne, big.mass, 2, 'dry, hose waste included'),
    ),
    line(
      'Water',
      (total.water / 1000) * costs.waterPerCubicMetre,
      times(total.water / 1000, costs.waterPerCubicMetre, big.volume, 2),
    ),
    line(
      'Pours',
      poured * costs.pourPerCubicMetre,
      times(poured, costs.pourPerCubicMetre, big.volume, 2, 'in columns'),
    ),
    line(
      'Protection',
      faces * costs.protectionPerSquareMetre,
      times(faces, costs.protectionPerSquareMetre, big.area, 1, 'both faces'),
    ),
    line('Embeds', job.embeds.length * costs.embedEach, `${job.embeds.length} × ${costs.embedEach}`),
    line('Lintels', lintels * costs.lintelEach, `${lintels} × ${costs.lintelEach}`),
  ]
}

/** Names of what is paid by, and how many of the metric one make one of it. */
type BigUnit = readonly [name: string, size: number]

const bigUnits: Readonly<Record<Job['units'], Readonly<Record<'mass' | 'volume' | 'area', BigUnit>>>> = {
  metric: { mass: ['t', 1], volume: ['m³', 1], area: ['m²', 1] },
  imperial: {
    mass: ['short tons', 0.90718474],
    volume: ['yd³', 0.9144 ** 3],
    area: ['ft²', 0.3048 ** 2],
  },
}

/** `11.20 t dry × 190`: an amount and its rate in the units of the site. */
function times(amount: number, rate: number, [name, size]: BigUnit, digits: number, of = ''): string {
  const what = of === '' ? name : `${name} ${of}`
  return `${(amount / size).toFixed(digits)} ${what} × ${Number((rate * size).toPrecision(4))}`
}
