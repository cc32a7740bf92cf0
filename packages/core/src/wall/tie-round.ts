import type { Metres } from '../quantity/index.js'
import type { Link, Place, Tie } from './tie-link.js'

/** Turns tighter than this are left sharp: nobody steers round a tenth of a millimetre. */
const tightest: Metres = 1e-4

/**
 * A zigzag whose peaks are arcs. Each arc's top lies where the sharp peak was, so the tie laps onto its wythe as far as
 * before and for longer; its legs are the common tangents of one arc and the next, across. The radius is the largest that
 * leaves `leg` of each leg straight: there the axis settles before it turns back the other way.
 *
 *   R = (h² + 4·a² − leg²)/(8·a)      h between two peaks, a from the centreline to a peak; h/2 at most where a > h/2
 *
 * From leg² = h² + 4·(a − R)² − (2R)², the common tangent of two circles of one radius; where the cavity is deeper than the
 * peaks are apart, quarter circles on legs straight across are the widest that do not bulge back.
 */
export function roundedZigzag(places: readonly Place[], leg: Metres): Tie {
  const radii = places.map((place, k) => {
    const [before, after] = [places[k - 1], places[k + 1]]
    if (!before || !after) return 0
    const reach = Math.abs(place[1])
    return Math.min(peakRadius(place[0] - before[0], reach, leg), peakRadius(after[0] - place[0], reach, leg))
  })
  const links: Link[] = []
  for (let k = 1; k < places.length; k++) {
    const { leave, enter } = crossTangent(places[k - 1]!, radii[k - 1]!, places[k]!, radii[k]!)
    if (radii[k - 1]! > 0) links.push({ to: leave, via: places[k - 1]! })
    links.push({ to: enter, how: 'straight' })
  }
  return { start: places[0]!, links }
}

/** Radius of the peaks of a zigzag over half a pitch, with this reach to each side; 0: it stays sharp. */
export function peakRadius(half: Metres, reach: Metres, leg: Metres): Metres {
  const widest = reach > half / 2 ? half / 2 : Number.POSITIVE_INFINITY
  const radius = Math.min(widest, (half ** 2 + 4 * reach ** 2 - leg ** 2) / (8 * reach))
  return radius > tightest ? radius : 0
}

/** Where the straight leg leaves one arc and enters the next, on the other side of the centreline. */
function crossTangent(from: Place, r: Metres, to: Place, q: Metres): { leave: Place; enter: Place } {
  const side = Math.sign(from[1])
  const [a, b] = [
    [from[0], from[1] - side * r],
    [to[0], to[1] + side * q],
  ] as const
  const [run, rise] = [b[0] - a[0], b[1] - a[1]]
  // the leg leans more than the line of centres, which it crosses
  const lean = Math.atan2(rise, run) - side * Math.asin((r + q) / Math.hypot(run, rise))
  const left = [-Math.sin(lean), Math.cos(lean)] as const
  return {
    leave: [a[0] + side * r * left[0], a[1] + side * r * left[1]],
    enter: [b[0] - side * q * left[0], b[1] - side * q * left[1]],
  }
}

/**
 * A meander of crossings, given by their feet, with quarter circles into and out of the runs along the wythes. `leg` of
 * each crossing and of each run stays straight; the ends, which lie on a wythe, stay square.
 */
export function roundedCrosstie(feet: readonly Place[], leg: Metres): Tie {
  const links: Link[] = []
  feet.forEach((foot, i) => {
    const [before, after] = [feet[i - 1], feet[i + 1]]
    const top: Place = [foot[0], -foot[1]]
    const into = before ? meanderRadius(foot[0] - before[0], Math.abs(foot[1]), leg) : 0
    const outOf = after ? meanderRadius(after[0] - foot[0], Math.abs(foot[1]), leg) : 0
    if (before) links.push({ to: [foot[0] - into, foot[1]], how: 'along' })
    if (into > 0) links.push(quarter(foot, [-into, 0], [0, -Math.sign(foot[1]) * into]))
    links.push({ to: [top[0], top[1] - Math.sign(top[1]) * outOf], how: 'straight' })
    if (outOf > 0) links.push(quarter(top, [0, -Math.sign(top[1]) * outOf], [outOf, 0]))
  })
  return { start: feet[0]!, links }
}

/** Radius of the corners of a meander between two crossings `run` apart; 0: they stay square. */
export function meanderRadius(run: Metres, reach: Metres, leg: Metres): Metres {
  const radius = Math.min((run - leg) / 2, reach - leg / 2)
  return radius > tightest ? radius : 0
}

/** From one leg of a square corner to the other; its middle lies 1 − √½ of both legs from the corner. */
function quarter([s, y]: Place, from: Place, to: Place): Link {
  const share = 1 - Math.SQRT1_2
  return { to: [s + to[0], y + to[1]], via: [s + share * (from[0] + to[0]), y + share * (from[1] + to[1])] }
}
