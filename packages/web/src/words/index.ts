export { english as words } from './english.js'
