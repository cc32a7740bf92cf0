import type { Instant } from '@dawnlift/core/quantity'

/** A moment as programs read it: ISO 8601 in UTC, to the millisecond. */
export const momentText = (at: Instant): string => new Date(Math.round(at * 1000)).toISOString()
