import type { Formula } from '../formula/index.js'
import { airFormulas } from './air-formulas.js'
import { crewFormulas } from './crew-formulas.js'
import { dryingFormulas } from './drying-formulas.js'
import { nozzleFormulas } from './nozzle-formulas.js'
import { sunFormulas } from './sun-formulas.js'

/** What `calc` offers about air, sun, drying and the crew. */
export const formulas: readonly Formula[] = [
  ...dryingFormulas,
  ...nozzleFormulas,
  ...airFormulas,
  ...crewFormulas,
  ...sunFormulas,
]
