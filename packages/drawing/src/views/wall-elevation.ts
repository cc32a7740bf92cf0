import { type Drawing, layer, type Sheet, scaleBar, titleBlock } from '../paper/index.js'
import { callLabels } from './call-labels.js'
import { dimensionMarks } from './elevation-dimensions.js'
import { columnMarks, embedMarks, layerLines, openingMarks, outlineMarks } from './elevation-marks.js'
import { type ElevationOptions, type ElevationParts, viewOf, within } from './elevation-view.js'
import { liftFields } from './lift-fields.js'

/** One wall unrolled along its centreline: lifts with their dates, layers, openings, lintels, embeds and calls. */
export function drawWallElevation(
  parts: ElevationParts,
  id: string,
  sheet: Sheet,
  options: ElevationOptions = {},
): Drawing {
  const { job } = parts
  const wall = job.walls.find(candidate => candidate.id === id)
  if (!wall) throw new RangeError(`no wall ${id} in ${job.name}`)
  const side = options.seenFrom ?? 'right'
  const view = viewOf(parts, wall, sheet, side, options)
  const lifts = liftFields(view)
  return {
    title: `${job.name}, ${wall.name}`,
    says: `Wall ${wall.name} unrolled, seen on its ${side} face, scale ${view.paper.scaleText}.`,
    width: sheet.width,
    height: sheet.height,
    layers: [
      layer('lifts', lifts.fields),
      layer('layers', layerLines(view)),
      layer(
        'openings',
        job.openings
          .filter(o => o.wall === id && within(view, o.at, o.width))
          .flatMap(o => openingMarks(view, o)),
      ),
      layer('columns', columnMarks(view)),
      layer(
        'embeds',
        job.embeds
          .filter(e => e.wall === id && within(view, e.at, e.width))
          .flatMap(e => embedMarks(view, e)),
      ),
      layer('outline', outlineMarks(view)),
      layer('names', lifts.names),
      layer('calls', callLabels(view)),
      layer('dimensions', dimensionMarks(view)),
      layer('frame', [
        ...(sheet.frame ? scaleBar(view.paper, [view.room.x + 4, view.room.y + 1], job.units) : []),
        ...titleBlock(sheet, {
          title: wall.name,
          subtitle: `Unrolled along the centreline, seen on its ${side} face. Start of the wall at the ${side === 'right' ? 'left' : 'right'}.`,
          scaleText: `scale ${view.paper.scaleText}`,
        }),
      ]),
    ],
  }
}
