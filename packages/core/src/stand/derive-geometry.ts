import type { Opening, PrintRules, Wall } from '../job/index.js'
import { sayQuantity, type Units } from '../limit/index.js'
import type { Metres } from '../quantity/index.js'
import { assert } from '../result/index.js'
import type { Section } from '../section/index.js'
import type { Band } from '../wall/index.js'
import { withPrintedBays } from './bays.js'
import { type CentrelinePiece, centrelinePieces } from './centreline.js'
import { type Interval, supportStations, type WallPart, wholeIntervals } from './returns.js'
import type { StandGeometry, StandMake, StandPanel, StandSupports } from './stand-geometry.js'

/**
 * Panels of a section between what holds its walls sideways. Returns, corners and T-junctions hold where the other leg
 * belongs to the same section, is whole at that height and at least twice as long as it is thick; jambs, wall ends and
 * section joints are free edges: a neighbour may not be there yet. With the section's bands a panel has the bays its
 * ties leave as printed; without them the pitch of the drawing.
 */
export function standGeometry(
  section: Section,
  walls: readonly Wall[],
  openings: readonly Opening[],
  print: Pick<PrintRules, 'beadWidth' | 'layerHeight'>,
  bands: readonly Band[] = [],
  units: Units = 'metric',
): StandGeometry {
  const parts = section.stretches.map((stretch): WallPart => {
    const wall = walls.find(({ id }) => id === stretch.wall)
    assert(wall, `wall ${stretch.wall} of section ${section.id} is in the job`)
    return {
      wall,
      from: stretch.from,
      to: stretch.to,
      pieces: centrelinePieces(wall.centreline),
      openings: openings.filter(opening => opening.wall === wall.id),
    }
  })
  const panels = parts.flatMap(part => panelsOfPart(part, parts, print, units))
  return withPrintedBays({ section: section.id, panels }, walls, bands, print.layerHeight)
}

function panelsOfPart(
  part: WallPart,
  parts: readonly WallPart[],
  print: Pick<PrintRules, 'beadWidth'>,
  units: Units,
): readonly StandPanel[] {
  const make = makeOf(part.wall, print)
  return heightBands(part).flatMap(([bottom, top]) =>
    wholeIntervals(part, bottom, top).flatMap(interval =>
      panelsOfInterval(part, interval, supportStations(part, interval, parts, bottom, top)).map(panel => ({
        ...panel,
        wall: part.wall.id,
        place: placeOf(part.wall, panel, units),
        length: panel.to - panel.from,
        bottom,
        top,
        make,
      })),
    ),
  )
}

/** A stretch of a wall as people of that site would measure it. */
function placeOf(
  wall: Wall,
  { from, to }: { readonly from: Metres; readonly to: Metres },
  units: Units,
): string {
  const stretch =
    units === 'metric'
      ? `${from.toFixed(2)}–${to.toFixed(2)} m`
      : `${sayQuantity(from, 'm', units)} to ${sayQuantity(to, 'm', units)}`
  return `wall ${wall.name || wall.id}, ${stretch}`
}

function makeOf(wall: Wall, print: Pick<PrintRules, 'beadWidth'>): StandMake {
  if (wall.makeUp.kind !== 'double') return { kind: 'leaf', thickness: wall.thickness }
  return {
    kind: 'double',
    thickness: wall.thickness,
    bead: print.beadWidth,
    web: wall.makeUp.web,
    pitch: wall.makeUp.webPitch,
  }
}

/** Heights between which the plan of a wall does not change. */
function heightBands({ wall, openings }: WallPart): readonly (readonly [Metres, Metres])[] {
  const cuts = [wall.base, wall.top, ...openings.flatMap(({ sill, head }) => [sill, head])]
    .filter(height => height >= wall.base && height <= wall.top)
    .sort((a, b) => a - b)
  return cuts.slice(1).flatMap((top, i) => (top - cuts[i]! > 1e-6 ? [[cuts[i]!, top] as const] : []))
}

type Bare = Pick<StandPanel, 'from' | 'to' | 'supports' | 'radius'>

function panelsOfInterval(part: WallPart, interval: Interval, supports: readonly Metres[]): readonly Bare[] {
  const { closed, length } = interval
  if (supports.length === 0) {
    const radius = radiusBetween(part.pieces, interval.from, interval.to)
    const ring = closed && radius !== undefined
    return [bare(part, interval.from, interval.to, ring ? 'ring' : 'none')]
  }
  const spans = supports.slice(1).map((to, i) => bare(part, supports[i]!, to, 'both'))
  const [first, last] = [supports[0]!, supports[supports.length - 1]!]
  const ends = closed
    ? [bare(part, last, first + length, 'both')]
    : [bare(part, interval.from, first, 'one'), bare(part, last, interval.to, 'one')]
  return [...spans, ...ends].filter(({ from, to }) => to - from > 0.01)
}

function bare(part: WallPart, from: Metres, to: Metres, supports: StandSupports): Bare {
  const radius = radiusBetween(part.pieces, from, to)
  return { from, to, supports, ...(radius === undefined ? {} : { radius }) }
}

/** The radius when all of the centreline between two stations bends one way with one radius. */
function radiusBetween(pieces: readonly CentrelinePiece[], from: Metres, to: Metres): Metres | undefined {
  const length = pieces[pieces.length - 1]!.to
  const within = pieces.filter(piece =>
    [0, length].some(lap => piece.to + lap > from + 1e-6 && piece.from + lap < to - 1e-6),
  )
  const radius = within[0]?.radius
  const same = (piece: CentrelinePiece) =>
    piece.radius !== undefined &&
    Math.abs(piece.radius - radius!) < 0.01 * radius! &&
    piece.turns === within[0]!.turns
  return radius !== undefined && within.every(same) ? radius : undefined
}
