export { dayText, fullDayText } from './day-words.js'
export type {
  CircleMark,
  Drawing,
  DrawingLayer,
  LineMark,
  Mark,
  PaperPoint,
  RegionMark,
  RibbonMark,
  TextMark,
} from './drawing.js'
export { layer } from './drawing.js'
export type { Bounds, FitOptions, PaperMap } from './fit.js'
export { boundsOf, fitTo } from './fit.js'
export type { FrameWords } from './frame.js'
export { northArrow, scaleBar, titleBlock } from './frame.js'
export { box, clipped, dimension, hatch, line, paragraph, region, text, wrapped } from './marks.js'
export { areaText, lengthText, temperatureText, volumeText } from './measure.js'
export type { Fill, Ink, Pen, PenLine, TextHeight } from './pens.js'
export { letterWidth, pens, sectionFill, textHeights, textWidth } from './pens.js'
export type { Room, Sheet, SheetWords } from './sheet.js'
export { drawingRoom, figure, paperSheet } from './sheet.js'
export type { SvgOptions } from './svg.js'
export { toSvg } from './svg.js'
export type { Palette } from './theme.js'
export { darkPalette, paperPalette } from './theme.js'
