import { checkLog } from '@dawnlift/core/log'
import type { Plan } from '@dawnlift/core/plan'
import type { Problem } from '@dawnlift/core/result'
import { addedLines, readLog } from '@dawnlift/formats/site-log'

/** What a log would contradict once these lines stand in it. Only what holds together is written down. */
export function checkLines(plan: Plan, log: string, lines: readonly string[]): readonly Problem[] {
  const { timeZone } = plan.job.site
  const read = readLog(log + addedLines(log, lines), timeZone)
  if (!read.ok) return read.problems
  const sections = plan.sections.map(({ id }, index) => ({
    section: id,
    layers: plan.bands[index]?.layers ?? 0,
  }))
  return checkLog(read.value, { sections, hours: plan.campaign.hours, timeZone })
}
