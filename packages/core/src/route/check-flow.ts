import { sayQuantity, type Units } from '../limit/index.js'
import type { Machine } from '../machine/index.js'
import type { Finding } from '../result/index.js'
import { beadFlow } from './bead-flow.js'
import type { Pass, SectionRoutes } from './pass.js'

const litresPerMinute = 1 / 60000

/** Flows the pump cannot give: too much for the speed asked, too little on the slowest piece. */
export function checkFlow(
  routes: SectionRoutes,
  asked: number,
  machine: Machine,
  units: Units = 'metric',
): Finding[] {
  const passes = routes.routes.flatMap(route => route.passes)
  const findings: Finding[] = []
  const thickest = worst(passes, pass => beadFlow(pass, 1))
  if (thickest && beadFlow(thickest, asked) > machine.pump.flowMost * (1 + 1e-9))
    findings.push(tooMuch(routes.section, thickest, asked, machine, units))
  const least = (pass: Pass) => beadFlow(pass, Math.min(...pass.speeds))
  const slowest = worst(passes, pass => -least(pass))
  if (slowest && least(slowest) < machine.pump.flowLeast * (1 - 1e-9))
    findings.push(tooLittle(routes.section, slowest, least(slowest), machine, units))
  return findings
}

function worst(passes: readonly Pass[], of: (pass: Pass) => number): Pass | undefined {
  return passes.reduce<Pass | undefined>((so, pass) => (so && of(so) >= of(pass) ? so : pass), undefined)
}

function tooMuch(section: string, pass: Pass, asked: number, machine: Machine, units: Units): Finding {
  const demand = beadFlow(pass, asked) / litresPerMinute
  const capacity = machine.pump.flowMost / litresPerMinute
  const speed = (machine.pump.flowMost / beadFlow(pass, 1)) * 1000
  return {
    check: 'pump-flow-most',
    at: `${section}/${pass.bead}`,
    point: pass.path.points[0]!,
    demand,
    capacity,
    unit: 'L/min',
    source: 'the job',
    verdict: 'warn',
    say: `Bead ${pass.bead} at ${sayQuantity(asked * 1000, 'mm/s', units)} needs ${sayQuantity(demand, 'L/min', units)}; the pump gives ${sayQuantity(capacity, 'L/min', units)}. It is planned at ${sayQuantity(speed, 'mm/s', units)}; a narrower bead or a larger pump would be faster.`,
  }
}

function tooLittle(section: string, pass: Pass, flow: number, machine: Machine, units: Units): Finding {
  const piece = pass.speeds.indexOf(Math.min(...pass.speeds))
  const demand = flow / litresPerMinute
  const capacity = machine.pump.flowLeast / litresPerMinute
  return {
    check: 'pump-flow-least',
    at: `${section}/${pass.bead}`,
    point: pass.path.points[piece]!,
    demand,
    capacity,
    unit: 'L/min',
    source: 'the job',
    verdict: 'warn',
    say: `Bead ${pass.bead} slows to ${sayQuantity(pass.speeds[piece]! * 1000, 'mm/s', units)}, ${sayQuantity(demand, 'L/min', units)}; the pump gives at least ${sayQuantity(capacity, 'L/min', units)}, so it lays too much there. Use a larger corner radius or a higher speed.`,
  }
}
