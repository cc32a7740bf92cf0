import type { SiteEvent, SiteLog } from '@dawnlift/core/log'
import type { Instant } from '@dawnlift/core/quantity'
import { failure, type Result, success } from '@dawnlift/core/result'
import { logFile, readLog, readTold, toldFile } from '../site-log/index.js'

/**
 * The site log beside a job, if there is one with anything in it. Its moment is that of its last event, so that the same
 * folder always gives the same plan; a day on which nothing happened is told by a note.
 */
export function jobLog(
  read: (name: string) => Uint8Array | undefined,
  zone: string,
): Result<SiteLog | undefined> {
  const [log, told] = [logFile, toldFile].map(name => {
    const content = read(name)
    return content && new TextDecoder().decode(content)
  })
  const events = log === undefined ? success<readonly SiteEvent[]>([]) : readLog(log, zone)
  const days = told === undefined ? undefined : readTold(told)
  if (!events.ok || (days && !days.ok))
    return failure([...(events.ok ? [] : events.problems), ...(days && !days.ok ? days.problems : [])])
  if (events.value.length === 0) return success(undefined)
  return success({
    events: events.value,
    now: lastMoment(events.value),
    ...(days ? { told: days.value.campaign } : {}),
  })
}

/** When the last of the events was over. */
const lastMoment = (events: readonly SiteEvent[]): Instant =>
  events.reduce((latest, event) => {
    const end = event.kind === 'stop' ? (event.until ?? event.at) : event.at
    return Math.max(latest, end)
  }, Number.NEGATIVE_INFINITY)
