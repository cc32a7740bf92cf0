import type { Campaign } from '@dawnlift/core/campaign'
import type { Instant } from '@dawnlift/core/quantity'
import { failure, type Result, success } from '@dawnlift/core/result'
import { z } from 'zod'
import { toldFile } from './log-files.js'

const time = z.number()
const count = z.int().nonnegative()
const liftSchema = z.looseObject({
  id: z.string(),
  section: z.string(),
  firstLayer: count,
  lastLayer: count,
  start: time,
  end: time,
  layerEnds: z.array(time),
  holds: z.array(z.looseObject({ afterLayer: count, duration: time, reason: z.string(), ref: z.string() })),
})
const toldSchema = z.looseObject({
  dawnliftTold: z.literal(1),
  at: time,
  days: z.array(
    z.looseObject({ date: z.string(), number: count, start: time, end: time, lifts: z.array(liftSchema) }),
  ),
})

/** The days of a campaign as everybody was told them at this moment. */
export const writeTold = ({ days }: Campaign, at: Instant): string =>
  `${JSON.stringify({ dawnliftTold: 1, at, days }, null, 1)}\n`

export interface Told {
  readonly at: Instant
  readonly campaign: Campaign
}

/** Reads what `writeTold` wrote. */
export function readTold(text: string): Result<Told> {
  const refuse = failure([
    {
      code: 'log/told',
      at: toldFile,
      say: 'These are no days that were told, or not all of them. Delete the file and tell everybody anew: dawnlift log JOB --tell',
    },
  ])
  let value: unknown
  try {
    value = JSON.parse(text)
  } catch {
    return refuse
  }
  const read = toldSchema.safeParse(value)
  if (!read.success) return refuse
  // What nobody is told of (hours, bound) is not kept: only days are compared.
  const days = read.data.days as unknown as Campaign['days']
  const finish = days.at(-1)?.lifts.at(-1)?.end ?? read.data.at
  const bound = { days: days.length, how: 'as told' }
  return success({
    at: read.data.at,
    campaign: { days, idleDays: [], finished: true, finish, hours: [], bound },
  })
}
