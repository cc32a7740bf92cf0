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
  const tonnes = total.dry / 1000
  const water = total.water / 1000
  const poured = pouredVolume(job)
  const faces = 2 * wallFace(job)
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
      tonnes * costs.materialPerTonne,
      `${tonnes.toFixed(2)} t dry, hose waste included × ${costs.materialPerTonne}`,
    ),
    line('Water', water * costs.waterPerCubicMetre, `${water.toFixed(2)} m³ × ${costs.waterPerCubicMetre}`),
    line(
      'Pours',
      poured * costs.pourPerCubicMetre,
      `${poured.toFixed(2)} m³ in columns × ${costs.pourPerCubicMetre}`,
    ),
    line(
      'Protection',
      faces * costs.protectionPerSquareMetre,
      `${faces.toFixed(1)} m² both faces × ${costs.protectionPerSquareMetre}`,
    ),
    line('Embeds', job.embeds.length * costs.embedEach, `${job.embeds.length} × ${costs.embedEach}`),
    line('Lintels', lintels * costs.lintelEach, `${lintels} × ${costs.lintelEach}`),
  ]
}
