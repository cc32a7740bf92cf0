export type { Drawing, DrawnBlock, DrawnPath, DrawnText, ReadOptions } from './drawing.js'
export { drawingWalls } from './drawing-walls.js'
export { MOST_BYTES } from './dxf-text.js'
export { readDrawing } from './read-drawing.js'
