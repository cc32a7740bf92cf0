import { clockText, localTime } from '../clock/index.js'
import type { Instant } from '../quantity/index.js'
import { closestName, type Problem } from '../result/index.js'
import { inOrder, type LayerDown, type SiteEvent, type TakenDown } from './site-event.js'

export interface LoggedSection {
  readonly section: string
  readonly layers: number
}

/** What a log is held against. */
export interface LoggedJob {
  readonly sections: readonly LoggedSection[]
  /** Hours of weather the plan has: nothing is known of what lies outside. */
  readonly hours: readonly { readonly start: Instant }[]
  readonly timeZone: string
}

/** What in a log cannot have happened: sections that are not there, layers beyond the top, a wall that shrinks untold. */
export function checkLog(
  events: readonly SiteEvent[],
  { sections, hours, timeZone: zone }: LoggedJob,
): readonly Problem[] {
  const standing = new Map<string, number>()
  return inOrder(events).flatMap(event => {
    const outside = checkMoment(event, hours, zone)
    if (outside.length > 0) return outside
    if (event.kind === 'stop') return checkStop(event, zone)
    if (event.kind !== 'layer' && event.kind !== 'taken-down') return []
    const section = sections.find(one => one.section === event.section)
    if (!section) return [noSection(event, sections, zone)]
    const problems = [...checkLayer(event, section, standing.get(event.section) ?? 0, zone)]
    if (problems.length === 0) standing.set(event.section, event.layer)
    return problems
  })
}

const moment = (at: Instant, zone: string) => `${localTime(at, zone).date} ${clockText(at, zone)}`
const place = (event: SiteEvent, zone: string) => `site log, ${event.kind} of ${moment(event.at, zone)}`

function checkMoment(event: SiteEvent, hours: LoggedJob['hours'], zone: string): readonly Problem[] {
  const [from, last] = [hours[0]?.start ?? event.at, hours.at(-1)?.start ?? event.at]
  const end = event.kind === 'stop' ? (event.until ?? event.at) : event.at
  if (event.at >= from && end < last + 3600) return []
  const say = `The job begins on ${localTime(from, zone).date} and its weather ends on ${localTime(last, zone).date}; this lies outside. Correct the moment, or the first day in the job.`
  return [{ code: 'log/outside', at: place(event, zone), say }]
}

function noSection(event: LayerDown | TakenDown, sections: readonly LoggedSection[], zone: string): Problem {
  const names = sections.map(one => one.section)
  const near = closestName(event.section, names)
  const say = `There is no section ${event.section}; this job has ${names.join(', ')}. ${near ? `Is ${near} meant?` : 'Name one of them.'}`
  return { code: 'log/no-section', at: place(event, zone), say }
}

function checkLayer(
  event: LayerDown | TakenDown,
  { section, layers }: LoggedSection,
  standing: number,
  zone: string,
): readonly Problem[] {
  const at = place(event, zone)
  if (event.layer > layers) {
    const say = `Section ${section} has ${layers} layers; the log says ${event.layer}. Strike the line and write the layer that is down.`
    return [{ code: 'log/too-high', at, say }]
  }
  if (event.kind === 'layer' && event.layer <= standing) {
    const say = `Layer ${standing} of section ${section} was down before; the log then says layer ${event.layer}. If part of it was taken down, say so with a line of its own; else strike the wrong one.`
    return [{ code: 'log/shrinks', at, say }]
  }
  if (event.kind === 'taken-down' && event.layer >= standing) {
    const say = `Section ${section} stood at layer ${standing}; taking it down to ${event.layer} takes nothing. Say the layer that still stands.`
    return [{ code: 'log/nothing-taken', at, say }]
  }
  return []
}

function checkStop(event: Extract<SiteEvent, { kind: 'stop' }>, zone: string): readonly Problem[] {
  if (event.until === undefined || event.until > event.at) return []
  const say = `The stop ends at ${moment(event.until, zone)}, before it begins. Strike the line and give its end.`
  return [{ code: 'log/stop-backwards', at: place(event, zone), say }]
}
