export type { Joint, Section, Stretch } from './section.js'
