import type { Campaign } from '../campaign/index.js'
import type { Instant } from '../quantity/index.js'
import type { SiteEvent } from './site-event.js'

/** What really happened, what people were told, and the moment from which the rest is planned. */
export interface SiteLog {
  readonly events: readonly SiteEvent[]
  /** The days everybody was last told of; without it, the plan made before the first layer. */
  readonly told?: Campaign
  readonly now: Instant
}
