import type { MakeUp, PrintRules, Wall, WebPattern } from '../job/index.js'
import type { Metres } from '../quantity/index.js'
import { solidFill } from './bead-section.js'
import { tieReach } from './double-wall.js'
import { tieLeg } from './tie.js'
import { meanderRadius, peakRadius } from './tie-round.js'

/**
 * Metres of bead in one layer of a metre of straight wall, before its beads exist: for dividing a plan into sections.
 * Leaves out jambs, corners and what openings take away.
 */
export function beadLengthPerMetre(
  { makeUp, thickness }: Pick<Wall, 'makeUp' | 'thickness'>,
  print: PrintRules,
): number {
  switch (makeUp.kind) {
    case 'single':
      return 1
    case 'solid':
      return solidFill(thickness, print.beadWidth, print.layerHeight).count
    case 'double':
      return 2 + tieLengthPerMetre(makeUp, tieReach(thickness, { print }), print)
  }
}

function tieLengthPerMetre(makeUp: MakeUp & { kind: 'double' }, reach: Metres, print: PrintRules): number {
  if (reach < 0) return 0
  if (reach < 1e-4) return 1
  const half = makeUp.webPitch / 2
  return tieLengths[makeUp.web](half, reach, tieRadius(makeUp, reach, print)) / half
}

/** Radius on which the tie of a double wall turns, as `tiePath` rounds it; 0: it turns on the spot, or needs no turn. */
export function tieTurn(
  { makeUp, thickness }: Pick<Wall, 'makeUp' | 'thickness'>,
  print: PrintRules,
): Metres {
  const reach = tieReach(thickness, { print })
  return makeUp.kind === 'double' && reach > 1e-4 ? tieRadius(makeUp, reach, print) : 0
}

function tieRadius(makeUp: MakeUp & { kind: 'double' }, reach: Metres, print: PrintRules): Metres {
  const half = makeUp.webPitch / 2
  if (makeUp.web === 'wave') return waveRadius(half, reach)
  if (print.cornerRadius === 0) return 0
  return { zigzag: peakRadius, crosstie: meanderRadius }[makeUp.web](half, reach, tieLeg(print))
}

/** An arc of chord h and rise a; deeper than half a circle it stands on legs. */
const waveRadius = (half: Metres, reach: Metres): Metres =>
  reach > half / 2 ? half / 2 : (half * half) / (8 * reach) + reach / 2

/** Length of a tie over half a pitch h with reach a to each side, turning on a radius. */
const tieLengths: Readonly<Record<WebPattern, (half: Metres, reach: Metres, radius: Metres) => Metres>> = {
  // The leg is the common tangent of two circles that it crosses between; each peak turns twice its slope.
  zigzag: (half, reach, radius) => {
    const [rise, span] = [2 * (reach - radius), Math.hypot(half, 2 * (reach - radius))]
    const slope = Math.atan2(rise, half) + Math.asin((2 * radius) / span)
    return Math.sqrt(span ** 2 - 4 * radius ** 2) + 2 * radius * slope
  },
  crosstie: (half, reach, radius) => half + 2 * reach - (4 - Math.PI) * radius,
  wave: (half, reach, radius) =>
    reach > half / 2 ? Math.PI * radius + 2 * (reach - radius) : 4 * Math.atan((2 * reach) / half) * radius,
}
