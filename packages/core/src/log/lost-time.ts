import type { Instant, Seconds } from '../quantity/index.js'
import { byKey } from './by-key.js'
import type { SiteEvent, Stopped } from './site-event.js'

/** Time the nozzle stood still for one cause. */
export interface LostTime {
  readonly cause: string
  readonly times: number
  readonly seconds: Seconds
}

/** Stops by cause, the costliest first. One without an end lasted until the next layer came down; without one, until now. */
export function lostTime(events: readonly SiteEvent[], now: Instant): readonly LostTime[] {
  const layers = events.filter(({ kind }) => kind === 'layer').map(({ at }) => at)
  const wentOn = ({ at }: Stopped) => Math.min(now, ...layers.filter(down => down > at))
  const stops = events.filter((event): event is Stopped => event.kind === 'stop')
  return [...byKey(stops, stop => stop.cause.trim().toLowerCase())]
    .map(([cause, all]) => ({
      cause,
      times: all.length,
      seconds: all.reduce((sum, stop) => sum + Math.max(0, (stop.until ?? wentOn(stop)) - stop.at), 0),
    }))
    .sort((a, b) => b.seconds - a.seconds)
}
