import type { Lift } from '@dawnlift/core/campaign'
import type { SectionAnswer, SectionBuckling } from '@dawnlift/core/stand'
import { z } from 'zod'
import { count, factor } from './bare-number.js'
import { headSchema, reportHead } from './report-head.js'

const bucklingSchema = z.strictObject({
  factor: factor('the weight may be this many times what it is; perfect geometry, no safety taken off'),
  strips: z.strictObject({ factor: factor('the same by the strips that plan'), place: z.string() }),
  where: z.strictObject({ x_m: z.number(), y_m: z.number(), height_m: z.number() }),
  mode: z.strictObject({
    positions_m: z.array(z.tuple([z.number(), z.number()])),
    edges: z.array(z.tuple([count, count])).meta({ description: 'Pairs of positions' }),
    heights_m: z.array(z.number()),
    moves: z
      .array(z.array(z.tuple([z.number(), z.number(), z.number()])))
      .meta({ description: 'Factor: x, y, z of each position and height, of the largest' }),
  }),
  unknowns: count,
  say: z.string(),
})

/** What `dawnlift stand --json` prints. */
export const standReportSchema = z
  .strictObject({
    ...headSchema('stand'),
    lift: z.string(),
    plannedSafety: factor('capacity over demand of the plan: a screening value for a licensed engineer'),
    kind: z.enum(['buckles', 'none', 'cancelled']),
    buckling: bucklingSchema.optional(),
    caution: z.string(),
  })
  .meta({ title: 'A lift as a whole section of shells' })

export const standReport = (
  lift: Lift,
  answer: SectionAnswer,
  caution: string,
): z.infer<typeof standReportSchema> => ({
  ...reportHead('stand'),
  lift: lift.id,
  plannedSafety: lift.safety,
  kind: answer.kind,
  ...(answer.kind === 'buckles' ? { buckling: bucklingReport(answer.buckling) } : {}),
  caution,
})

const bucklingReport = ({
  factor,
  quick,
  where,
  mode,
  unknowns,
  say,
}: SectionBuckling): z.infer<typeof bucklingSchema> => ({
  factor,
  strips: { factor: quick.factor, place: quick.place },
  where: { x_m: where.x, y_m: where.y, height_m: where.height },
  mode: {
    positions_m: mode.positions.map(([x, y]) => [x, y]),
    edges: mode.edges.map(([from, to]) => [from, to]),
    heights_m: [...mode.heights],
    moves: mode.moves.map(levels => levels.map(([x, y, z]) => [x, y, z])),
  },
  unknowns,
  say,
})
