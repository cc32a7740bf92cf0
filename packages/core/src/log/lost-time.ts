import type { Instant, Seconds } from '../quantity/index.js'
import { byKey } from './by-key.js'
import type { SiteEvent, Stopped } from './site-event.js'

/** Time the nozzle stood still for one cause. */
export interface LostTime {
  readonly cause: string
  readonly times: number
  readonly seconds: Seconds
}

/** Stops by cause, the costliest first; one that still lasts counts until now. */
export function lostTime(events: readonly SiteEvent[], now: Instant): readonly LostTime[] {
  const stops = events.filter((event): event is Stopped => event.kind === 'stop')
  return [...byKey(stops, stop => stop.cause.trim().toLowerCase())]
    .map(([cause, all]) => ({
      cause,
      times: all.length,
      seconds: all.reduce((sum, { at, until }) => sum + Math.max(0, (until ?? now) - at), 0),
    }))
    .sort((a, b) => b.seconds - a.seconds)
}
