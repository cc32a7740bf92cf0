import { formatQuantity } from './format-quantity.js'

/** A place in plan as its reader measures it: `(1.25, 0.80 m)`, `(4' 1 3/16", 2' 7 1/2")`. */
export function formatPlace([x, y]: readonly [number, number], units: 'metric' | 'imperial'): string {
  return units === 'metric'
    ? `(${x.toFixed(2)}, ${y.toFixed(2)} m)`
    : `(${formatQuantity(x, 'length', units)}, ${formatQuantity(y, 'length', units)})`
}
