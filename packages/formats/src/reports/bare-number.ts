import { z } from 'zod'

/** A number of a report that has no unit says so, and what it is; every other carries its unit in its name or beside it. */
const bare = (kind: string, what: string) => z.number().meta({ description: `${kind}: ${what}` })

export const share = (what: string) => bare('Share of one', what)
export const factor = (what: string) => bare('Factor', what)
/** The number the controller sends to the pump, the S word of the machine file. */
export const setting = (what: string) => bare('Pump setting', what)
export const count = z.int().nonnegative()
