import type { Job, Wall } from '../job/index.js'
import { cornerRadius } from '../machine/index.js'
import type { Metres, MetresPerSecond, Seconds } from '../quantity/index.js'
import { beadLengthPerMetre, tieTurn } from '../wall/index.js'

/**
 * Time to print one layer of one metre of wall: the beads along the wall at full speed, and the web leg by leg, slowed
 * down at every turn as far as acceleration and the heading axis ask.
 *
 *   leg of length ℓ between turns taken at v꜀: peak v̂ = min(v, √(v꜀² + a·ℓ)); t = 2(v̂ − v꜀)/a + (ℓ − (v̂² − v꜀²)/a)/v̂
 *
 * Source   closed form: motion with constant acceleration; turns inscribed by arcs as in `cornerRadius`.
 * Range    any machine and make-up.
 * Assumes  straight walls without openings; starts are counted apart. An estimate for dividing; the route is timed truly.
 */
export function layerTimePerMetre(
  wall: Pick<Wall, 'makeUp' | 'thickness'>,
  print: Job['print'],
  machine: Job['machine'] | undefined,
  beadMetres: number = beadLengthPerMetre(wall, print),
): Seconds {
  const plain = beadMetres / print.speed
  if (wall.makeUp.kind !== 'double' || !machine) return plain
  const web = Math.max(0, beadMetres - 2)
  const legs = 2 / wall.makeUp.webPitch
  const turn = turnSpeed(wall, web / legs, print, machine)
  return 2 / print.speed + legs * legTime(web / legs, turn, print.speed, machine.acceleration)
}

/** Speed at which the nozzle goes round from one leg of the web into the next. */
function turnSpeed(
  wall: Pick<Wall, 'makeUp' | 'thickness'>,
  leg: Metres,
  print: Job['print'],
  machine: Job['machine'],
): MetresPerSecond {
  const { makeUp } = wall
  const pitch = makeUp.kind === 'double' ? makeUp.webPitch : Number.POSITIVE_INFINITY
  const isSquare = makeUp.kind === 'double' && makeUp.web === 'crosstie'
  const between = isSquare ? Math.PI / 2 : 2 * Math.asin(Math.min(leg, pitch / 2) / leg)
  const radius = Math.max(tieTurn(wall, print), cornerRadius(between, machine.cornerDeviation))
  const heading = machine.headingRate > 0 ? machine.headingRate * radius : Number.POSITIVE_INFINITY
  return Math.min(print.speed, heading, Math.sqrt(machine.acceleration * radius))
}

function legTime(leg: Metres, turn: MetresPerSecond, speed: MetresPerSecond, acceleration: number): Seconds {
  const peak = Math.min(speed, Math.sqrt(turn ** 2 + acceleration * leg))
  const cruise = Math.max(0, leg - (peak ** 2 - turn ** 2) / acceleration)
  return (2 * (peak - turn)) / acceleration + cruise / peak
}
