import { formulas as bond } from '../bond/index.js'
import { formulas as campaign } from '../campaign/index.js'
import { formulas as cure } from '../cure/index.js'
import type { Formula } from '../formula/index.js'
import { formulas as machine } from '../machine/index.js'
import { formulas as mix } from '../mix/index.js'
import { formulas as pour } from '../pour/index.js'
import { formulas as pump } from '../pump/index.js'
import { formulas as route } from '../route/index.js'
import { formulas as stand } from '../stand/index.js'
import { formulas as tally } from '../tally/index.js'
import { formulas as trial } from '../trial/index.js'
import { formulas as wall } from '../wall/index.js'
import { formulas as weather } from '../weather/index.js'

/** Every formula of the product: what `calc`, the app and the tests read. */
export const allFormulas: readonly Formula[] = [
  ...[bond, campaign, cure, machine, mix, pour, pump, route, stand, tally, trial, wall, weather].flat(),
].sort((a, b) => (a.name < b.name ? -1 : 1))
