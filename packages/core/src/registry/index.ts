export { allFormulas } from './registry.js'
