import { clockText, localTime } from '@dawnlift/core/clock'
import type { Plan } from '@dawnlift/core/plan'
import type { LogRow } from '@dawnlift/formats/site-log'
import { Button } from '@mantine/core'
import { useState } from 'react'
import { strikeLine, waitingEntry } from '../../site-log/index.js'
import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'
import { dayText } from '../days/day-text.js'
import { useLog } from './use-log.js'

const few = 8

/** The log, the newest line on top; a wrong one is struck, never wiped out. */
export function LogList({ plan }: { readonly plan: Plan }) {
  const { rows } = useLog(plan)
  const unsent = useApp(state => state.unsentLog)
  const isServed = useApp(state => state.revision !== undefined)
  const [all, setAll] = useState(false)
  if (rows.length === 0) return null
  const newest = [...rows].reverse()
  const zone = plan.job.site.timeZone
  return (
    <section className="sheet" aria-labelledby="log-list-title">
      <h2 id="log-list-title">{words.log.list}</h2>
      {unsent > 0 && (
        <p className="limit" role="status">
          {words.log.unsent(unsent)}
        </p>
      )}
      <ol className="log">
        {(all ? newest : newest.slice(0, few)).map(row => (
          <Row key={row.line} row={row} zone={zone} strikes={isServed} />
        ))}
      </ol>
      {rows.length > few && (
        <Button variant="default" aria-pressed={all} onClick={() => setAll(!all)}>
          {all ? words.log.few : words.log.all(rows.length)}
        </Button>
      )}
    </section>
  )
}

function Row({
  row,
  zone,
  strikes,
}: {
  readonly row: LogRow
  readonly zone: string
  readonly strikes: boolean
}) {
  const said = sayEvent(row.event)
  const { log } = words
  return (
    <li className={row.isStruck ? 'struck' : ''}>
      <span className="when">
        {dayText(localTime(row.at, zone).date)} {clockText(row.at, zone)}
      </span>
      <span>
        {row.isStruck ? <s>{said}</s> : said}
        {row.isStruck && <span className="soft"> {log.struck}</span>}
        {waitingEntry(row.line) && <span className="soft"> {log.waiting}</span>}
      </span>
      {strikes && !row.isStruck && (
        <Button
          variant="default"
          aria-label={log.strikeRow(row.line, said)}
          onClick={() => strikeLine(row.line)}
        >
          {log.strike}
        </Button>
      )}
    </li>
  )
}

function sayEvent(event: LogRow['event']): string {
  const { said } = words.log
  switch (event.what) {
    case 'shift':
      return said.shift
    case 'layer':
      return said.layer(event.section, event.layer)
    case 'taken-down':
      return said.takenDown(event.section, event.layer)
    case 'stop':
      return said.stop(event.cause, event.until?.slice(11))
    case 'note':
      return event.text
  }
}
