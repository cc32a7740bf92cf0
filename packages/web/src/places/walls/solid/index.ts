export { SolidView } from './solid-view.js'
