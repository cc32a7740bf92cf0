export { ImportDrawing } from './import-drawing.js'
export { reading } from './reading.js'
