import type { Metres } from '../quantity/index.js'

const FOUR_FEET: Metres = 1.2192
const EIGHT_FEET: Metres = 2.4384

/**
 * Width of the limited-access zone beside a wall under construction, in m, its full height and four feet: b = H + 4 ft.
 *
 * @param height  the wall's height when finished [m]
 *
 * Source   [OSHA1926.706](a), read directly (interpretation letters of 1989 and 1993).
 * Range    any height; the zone runs the full length of the wall, on the side without scaffold.
 * Assumes  the rule is written for masonry: for printed walls it is a prudent analogy. Set up before the wall starts,
 *          entered only by those building it, kept until the wall is supported. Local law decides.
 */
export const accessZoneWidth = (height: Metres): Metres => height + FOUR_FEET

/** [OSHA1926.706](b): walls over eight feet are braced unless otherwise supported, until permanent supports are in. */
export const needsBracing = (height: Metres): boolean => height > EIGHT_FEET + 1e-9
