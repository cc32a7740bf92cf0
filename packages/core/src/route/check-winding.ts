import type { Units } from '../limit/index.js'
import type { Machine } from '../machine/index.js'
import { formatPlace } from '../quantity/index.js'
import type { Finding } from '../result/index.js'
import type { SectionRoutes } from './pass.js'
import type { WoundBead } from './wind-back.js'

/** Beads that wind the nozzle further than its axis goes: the worst that stops to turn back, the worst that cannot. */
export function checkWinding(
  { section }: SectionRoutes,
  wound: readonly WoundBead[],
  machine: Machine,
  units: Units = 'metric',
): Finding[] {
  const worst = [true, false].map(impossible =>
    wound
      .filter(each => each.impossible === impossible)
      .reduce<WoundBead | undefined>((so, each) => (so && so.span >= each.span ? so : each), undefined),
  )
  return worst.flatMap(each => (each ? [windingFinding(section, each, machine, units)] : []))
}

function windingFinding(
  section: string,
  { bead, span, stops, impossible }: WoundBead,
  machine: Machine,
  units: Units,
): Finding {
  const demand = degrees(span)
  const capacity = degrees(2 * machine.headingTravel)
  const point = stops[0]
  const places = stops.map(stop => formatPlace(stop, units)).join(' and ')
  const winds = `Bead ${bead} winds the nozzle through ${demand.toFixed(0)}°; the axis goes ${degrees(machine.headingTravel).toFixed(0)}° each way from its home`
  return {
    check: 'heading-travel',
    at: `${section}/${bead}`,
    ...(point ? { point } : {}),
    demand,
    capacity,
    unit: 'deg',
    source: 'the job',
    verdict: impossible ? 'fail' : 'warn',
    say: impossible
      ? `${winds}, and turning back does not help. Use a round nozzle or give the axis more travel.`
      : `${winds}. It stops at ${places}, pump off, to turn back 360°: a seam. More travel of the axis avoids it.`,
  }
}

const degrees = (angle: number): number => (angle * 180) / Math.PI
