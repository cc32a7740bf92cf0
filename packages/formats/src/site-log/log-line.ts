import { z } from 'zod'

const moment = z.string('needs a moment as text, such as "2026-07-06 07:13"')
const words = z.string('needs words').trim().min(1, 'needs words').max(500, 'may have 500 letters at most')
const section = z
  .string('needs the name of a section, such as "A"')
  .trim()
  .min(1, 'needs the name of a section')
const whole = (least: number) =>
  z
    .int(`needs a whole number of layers, ${least} at least`)
    .min(least, `needs a whole number of layers, ${least} at least`)
    .max(100_000, 'may be 100000 at most')

/** One line of a site log, as written. */
export const lineSchema = z.discriminatedUnion(
  'what',
  [
    z.strictObject({ at: moment, what: z.literal('shift') }),
    z.strictObject({ at: moment, what: z.literal('layer'), section, layer: whole(1) }),
    z.strictObject({ at: moment, what: z.literal('taken-down'), section, layer: whole(0) }),
    z.strictObject({ at: moment, what: z.literal('stop'), cause: words, until: moment.optional() }),
    z.strictObject({ at: moment, what: z.literal('note'), text: words }),
    z.strictObject({ what: z.literal('strike'), line: whole(1) }),
  ],
  { error: 'needs “what”: one of shift, layer, taken-down, stop, note, strike' },
)

export type LogLine = z.infer<typeof lineSchema>

/** Keys a line of each kind may have, for hints. */
export const keysOf: Readonly<Record<LogLine['what'], readonly string[]>> = {
  shift: ['at', 'what'],
  layer: ['at', 'what', 'section', 'layer'],
  'taken-down': ['at', 'what', 'section', 'layer'],
  stop: ['at', 'what', 'cause', 'until'],
  note: ['at', 'what', 'text'],
  strike: ['what', 'line'],
}
