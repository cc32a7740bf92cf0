import { momentText } from '@dawnlift/core/clock'
import type { SiteEvent } from '@dawnlift/core/log'
import type { LogLine } from './log-line.js'

/** An event as the line that is added to a log, without its end of line. */
export const writeEvent = (event: SiteEvent, zone: string): string => JSON.stringify(lineOf(event, zone))

/** The line that strikes an earlier one. */
export const writeStrike = (line: number): string =>
  JSON.stringify({ what: 'strike', line } satisfies LogLine)

function lineOf(event: SiteEvent, zone: string): LogLine {
  const at = momentText(event.at, zone)
  switch (event.kind) {
    case 'shift':
      return { at, what: 'shift' }
    case 'layer':
    case 'taken-down':
      return { at, what: event.kind, section: event.section, layer: event.layer }
    case 'stop':
      return {
        at,
        what: 'stop',
        cause: event.cause,
        ...(event.until === undefined ? {} : { until: momentText(event.until, zone) }),
      }
    case 'note':
      return { at, what: 'note', text: event.text }
  }
}
