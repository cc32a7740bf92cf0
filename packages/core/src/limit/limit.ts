import type { Instant } from '../quantity/index.js'

/** Everything that can stop a lift. Words for people live in `limit-words.ts`. */
export type LimitKind =
  | 'lift-height'
  | 'lintel-head'
  | 'pour-level'
  | 'top-of-wall'
  | 'first-layer'
  | 'collapse'
  | 'buckling'
  | 'resting-time'
  | 'mix-hot'
  | 'mix-cold'
  | 'air-cold'
  | 'evaporation'
  | 'wind'
  | 'gust'
  | 'rain'
  | 'crew-heat'
  | 'daylight'
  | 'permitted-hours'
  | 'shift'
  | 'overnight-cure'
  | 'delivery'
  | 'broken-off'

/** One limit as it bears on one lift or one hour. */
export interface Limit {
  readonly kind: LimitKind
  /** When it bites, for limits that follow the clock. */
  readonly at?: Instant
  readonly demand: number
  readonly capacity: number
  readonly unit: string
  /** Reference key, `common practice, no source`, or `the job`. */
  readonly source: string
}
