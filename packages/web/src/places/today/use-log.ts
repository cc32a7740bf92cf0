import type { Plan } from '@dawnlift/core/plan'
import type { Instant } from '@dawnlift/core/quantity'
import type { Problem } from '@dawnlift/core/result'
import { type LogRow, logFile, logRows } from '@dawnlift/formats/site-log'
import { useEffect, useMemo, useState } from 'react'
import { checkLines, logLines } from '../../site-log/index.js'
import { useApp } from '../../state/index.js'

export interface ShownLog {
  readonly text: string
  readonly rows: readonly LogRow[]
}

/** The site log as it stands here, with what waits for the server at its end. */
export function useLog({ job }: Plan): ShownLog {
  const content = useApp(state => state.files?.beside[logFile])
  const { timeZone } = job.site
  return useMemo(() => {
    const text = new TextDecoder().decode(content ?? new Uint8Array())
    return { text, rows: logRows(text, timeZone) }
  }, [content, timeZone])
}

/** Writes lines down if the log with them holds together; else says why not. */
export function writeDown(plan: Plan, { text }: ShownLog, lines: readonly string[]): readonly Problem[] {
  const problems = checkLines(plan, text, lines)
  if (problems.length === 0) logLines(lines)
  return problems
}

const clockNow = () => Math.floor(Date.now() / 1000)

/** The real clock, to the second, looked at every few seconds. */
export function useClock(): Instant {
  const [now, setNow] = useState(clockNow)
  useEffect(() => {
    const tick = setInterval(() => setNow(clockNow()), 5000)
    return () => clearInterval(tick)
  }, [])
  return now
}
