import type { MakeUp, PrintRules, Wall, WebPattern } from '../job/index.js'
import type { Metres } from '../quantity/index.js'
import { solidFill } from './bead-section.js'
import { tieReach } from './double-wall.js'

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
      return 2 + tieLengthPerMetre(makeUp, tieReach(thickness, { print }))
  }
}

function tieLengthPerMetre(makeUp: MakeUp & { kind: 'double' }, reach: Metres): number {
  if (reach < 0) return 0
  if (reach < 1e-4) return 1
  const half = makeUp.webPitch / 2
  return tieLengths[makeUp.web](half, reach) / half
}

/** Length of a tie over half a pitch h with reach a to each side. */
const tieLengths: Readonly<Record<WebPattern, (half: Metres, reach: Metres) => Metres>> = {
  zigzag: (half, reach) => Math.hypot(half, 2 * reach),
  crosstie: (half, reach) => half + 2 * reach,
  // An arc of chord h and rise a; deeper than half a circle it stands on legs.
  wave: (half, reach) => {
    if (reach > half / 2) return (Math.PI * half) / 2 + 2 * (reach - half / 2)
    const radius = (half * half) / (8 * reach) + reach / 2
    return 4 * Math.atan((2 * reach) / half) * radius
  },
}
