export type { Band, Bead, BeadRole, SectionBands, Snap } from './bead.js'
