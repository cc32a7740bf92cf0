export { readMixTests } from './read-mix-tests.js'
