import { z } from 'zod'

/** What every report begins with, so that a program knows what it has been handed. */
export const headSchema = <Name extends string>(command: Name) => ({
  format: z.literal(`dawnlift-${command}` as const),
  version: z.literal(1),
})

export const reportHead = <Name extends string>(command: Name) =>
  ({ format: `dawnlift-${command}`, version: 1 }) as const
