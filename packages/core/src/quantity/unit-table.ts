import type { Dimension, DimensionUnits } from './dimension.js'
import { unitsOfMatter } from './units-of-matter.js'
import { unitsOfMotion } from './units-of-motion.js'

/** Every unit that the job, the command line and the formulas take. */
export const unitTable: Readonly<Record<Dimension, DimensionUnits>> = { ...unitsOfMotion, ...unitsOfMatter }
