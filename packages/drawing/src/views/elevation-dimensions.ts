import { dimension, lengthText, type Mark } from '../paper/index.js'
import { type ElevationView, within } from './elevation-view.js'

/** Openings along the foot; sill and head at the left of the first of each height. */
export function dimensionMarks(view: ElevationView): Mark[] {
  const { parts, wall, paper, along } = view
  const units = parts.job.units
  const foot = paper.toPaper([0, wall.base])[1] - 5
  const stations = [
    along[0],
    ...parts.job.openings
      .filter(opening => opening.wall === wall.id && within(view, opening.at, opening.width))
      .flatMap(opening => [opening.at - opening.width / 2, opening.at + opening.width / 2]),
    along[1],
  ]
    .filter(s => s >= along[0] - 1e-9 && s <= along[1] + 1e-9)
    .sort((a, b) => a - b)
  const chain = stations.slice(1).flatMap((to, index) => {
    const from = stations[index]!
    if (to - from < 0.005) return []
    const x = [paper.toPaper([from, 0])[0], paper.toPaper([to, 0])[0]].sort((a, b) => a - b)
    return dimension([x[0]!, foot], [x[1]!, foot], lengthText(to - from, units))
  })
  const whole =
    stations.length > 2
      ? [paper.toPaper([along[0], 0])[0], paper.toPaper([along[1], 0])[0]].sort((a, b) => a - b)
      : []
  const left = Math.min(paper.toPaper([along[0], 0])[0], paper.toPaper([along[1], 0])[0]) - 10
  return [
    ...chain,
    ...(whole.length
      ? dimension([whole[0]!, foot - 4.5], [whole[1]!, foot - 4.5], lengthText(along[1] - along[0], units))
      : []),
    ...dimension(
      [left, paper.toPaper([0, wall.base])[1]],
      [left, paper.toPaper([0, wall.top])[1]],
      lengthText(wall.top - wall.base, units),
    ),
  ]
}
