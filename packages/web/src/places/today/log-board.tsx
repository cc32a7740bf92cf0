import { clockText, localTime } from '@dawnlift/core/clock'
import type { SiteEvent } from '@dawnlift/core/log'
import type { Plan } from '@dawnlift/core/plan'
import type { Instant } from '@dawnlift/core/quantity'
import type { Problem } from '@dawnlift/core/result'
import { type LogRow, openStop, writeEvent, writeStrike } from '@dawnlift/formats/site-log'
import { Button, Group, SegmentedControl, TextInput } from '@mantine/core'
import { useState } from 'react'
import { strikeLine, waitingEntry } from '../../site-log/index.js'
import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'
import { dayText } from '../days/day-text.js'
import { LayerDown } from './layer-down.js'
import { spell } from './today-list.js'
import { useClock, useLog, writeDown } from './use-log.js'

/** What happened, written down by touch: a layer, a stop and why, the shift, anything else. */
export function LogBoard({ plan }: { readonly plan: Plan }) {
  const isServed = useApp(state => state.revision !== undefined)
  const log = useLog(plan)
  const when = useWhen(plan)
  const [wrong, setWrong] = useState<readonly Problem[]>([])
  const zone = plan.job.site.timeZone
  const write = (event: SiteEvent) => setWrong(writeDown(plan, log, [writeEvent(event, zone)]))
  const goOn = (stop: LogRow) => setWrong(endStop(plan, log, stop, when.at))
  if (!isServed)
    return (
      <section className="sheet" aria-labelledby="log-title">
        <h2 id="log-title">{words.log.title}</h2>
        <p className="soft">{words.log.tabOnly}</p>
      </section>
    )
  const stop = openStop(log.rows)
  return (
    <section className="sheet gloves log-board" aria-labelledby="log-title">
      <h2 id="log-title">{words.log.title}</h2>
      {when.choice}
      <LayerDown plan={plan} at={when.at} write={write} />
      {stop ? (
        <Stopped stop={stop} at={when.at} zone={zone} goOn={() => goOn(stop)} />
      ) : (
        <Stop write={cause => write({ kind: 'stop', at: when.at, cause })} />
      )}
      <Group gap="sm" mt="sm">
        <Button variant="default" onClick={() => write({ kind: 'shift', at: when.at })}>
          {words.log.shift}
        </Button>
        <Button
          variant="default"
          onClick={() => write({ kind: 'note', at: when.at, text: words.log.shiftEnded })}
        >
          {words.log.shiftEnds}
        </Button>
      </Group>
      <Typed
        label={words.log.note}
        doing={words.log.keep}
        write={text => write({ kind: 'note', at: when.at, text })}
      />
      {wrong.length > 0 && (
        <ul className="limit" role="alert">
          {wrong.map(({ say }) => (
            <li key={say}>{say}</li>
          ))}
        </ul>
      )}
    </section>
  )
}

/** The real clock, or the campaign's: the crew may write down in the evening what was in the morning. */
function useWhen(plan: Plan) {
  const now = useClock()
  const moment = useApp(state => state.moment)
  const { hours } = plan.campaign
  const isWithin = (hours[0]?.start ?? now) <= now && now < (hours.at(-1)?.start ?? now) + 3600
  const [chosen, setChosen] = useState<'now' | 'shown'>()
  const which = chosen ?? (isWithin ? 'now' : 'shown')
  const zone = plan.job.site.timeZone
  const shown = Math.floor(moment)
  const choice = (
    <SegmentedControl
      aria-label={words.log.when}
      value={which}
      onChange={value => setChosen(value as typeof which)}
      data={[
        { value: 'now', label: words.log.now(clockText(now, zone)), disabled: !isWithin },
        {
          value: 'shown',
          label: words.log.shown(`${dayText(localTime(shown, zone).date)} ${clockText(shown, zone)}`),
        },
      ]}
    />
  )
  return { at: which === 'now' ? now : shown, choice }
}

/** A stop of the log that lasts is struck and written again with its end: lines are only ever added. */
function endStop(
  plan: Plan,
  log: Parameters<typeof writeDown>[1],
  stop: LogRow,
  until: Instant,
): readonly Problem[] {
  if (stop.event.what !== 'stop') return []
  const ended = writeEvent(
    { kind: 'stop', at: stop.at, cause: stop.event.cause, until },
    plan.job.site.timeZone,
  )
  if (!waitingEntry(stop.line)) return writeDown(plan, log, [writeStrike(stop.line), ended])
  const problems = writeDown(plan, log, [ended])
  if (problems.length === 0) strikeLine(stop.line)
  return problems
}

function Stopped({
  stop,
  at,
  zone,
  goOn,
}: {
  readonly stop: LogRow
  readonly at: Instant
  readonly zone: string
  readonly goOn: () => void
}) {
  const cause = stop.event.what === 'stop' ? stop.event.cause : ''
  return (
    <div className="nextup hold" role="status">
      <strong>{words.log.stopped(cause, clockText(stop.at, zone), spell(Math.max(0, at - stop.at)))}</strong>
      <span>
        <Button onClick={goOn} disabled={at <= stop.at}>
          {words.log.goesOn}
        </Button>
      </span>
    </div>
  )
}

function Stop({ write }: { readonly write: (cause: string) => void }) {
  return (
    <fieldset className="causes">
      <legend>{words.log.stop}</legend>
      <Group gap="sm">
        {words.log.causes.map(cause => (
          <Button key={cause} variant="default" onClick={() => write(cause)}>
            {cause}
          </Button>
        ))}
      </Group>
      <Typed label={words.log.why} doing={words.log.stopFor} write={write} />
    </fieldset>
  )
}

function Typed({
  label,
  doing,
  write,
}: {
  readonly label: string
  readonly doing: string
  readonly write: (text: string) => void
}) {
  const [text, setText] = useState('')
  const done = () => {
    if (text.trim() === '') return
    write(text.trim().slice(0, 500))
    setText('')
  }
  return (
    <Group gap="sm" mt="sm" align="end" wrap="nowrap">
      <TextInput
        label={label}
        value={text}
        style={{ flex: 1 }}
        onChange={event => setText(event.currentTarget.value)}
        onKeyDown={event => event.key === 'Enter' && done()}
      />
      <Button variant="default" disabled={text.trim() === ''} onClick={done}>
        {doing}
      </Button>
    </Group>
  )
}
