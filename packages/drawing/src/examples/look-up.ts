import type { Drawing, LineMark, Mark, TextMark } from '../paper/index.js'

/** The marks of one layer of a drawing, or of all. */
export const marksOf = (drawing: Drawing, name?: string): readonly Mark[] =>
  drawing.layers.filter(layer => !name || layer.name === name).flatMap(layer => layer.marks)
/** The one line that stands for a thing. Throws where it is not drawn. */
export const refOf = (drawing: Drawing, ref: string): LineMark => {
  const mark = marksOf(drawing).find(m => m.kind === 'line' && m.ref === ref)
  if (mark?.kind !== 'line') throw new Error(`${ref} is not drawn`)
  return mark
}
/** From where to where a line goes along an axis of the paper. */
export const span = (mark: LineMark, axis: 0 | 1): readonly [number, number] => {
  const values = mark.points.map(point => point[axis])
  return [Math.min(...values), Math.max(...values)]
}
export const textsOf = (drawing: Drawing): readonly TextMark[] =>
  marksOf(drawing).filter(mark => mark.kind === 'text')
