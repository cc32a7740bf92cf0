import type { Formula } from '../formula/index.js'
import { formulas as machine } from '../machine/index.js'
import { formulas as route } from '../route/index.js'
import { formulas as tally } from '../tally/index.js'
import { formulas as wall } from '../wall/index.js'

/** Every formula of the product: what `calc`, the app and the tests read. */
export const allFormulas: readonly Formula[] = [...wall, ...machine, ...route, ...tally].sort((a, b) =>
  a.name < b.name ? -1 : 1,
)
