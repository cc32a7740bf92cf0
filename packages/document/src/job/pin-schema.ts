import { z } from 'zod'
import { block, choice, count, date, identifier, words } from './field.js'

/** `section` with `notOn`; or with `lift` and `on`, and `layers` where it is to be just so high. */
export const pinSchema = block({
  section: identifier(),
  notOn: z.array(date()).min(1).max(400).optional().meta({ description: 'Dates on which the section rests' }),
  lift: count(1, 1000).optional().meta({ description: 'Number of the lift, counted from the slab' }),
  on: date().optional().meta({ description: 'The date on which that lift is printed' }),
  layers: words(40)
    .optional()
    .meta({ description: 'Its first and last layer, like “47 to 92”; left out, as high as it goes' }),
  why: words().optional(),
})

export const aimSchema = choice(['soonest', 'cheapest', 'calmest']).meta({
  description: 'What counts first in choosing the days',
})
