import type { Plan } from '@dawnlift/core/plan'
import { Button, Group } from '@mantine/core'
import { useState } from 'react'
import type { LiftMove } from '../../state/index.js'
import { words } from '../../words/index.js'
import { dayText } from './day-text.js'
import { liftName, pinEdits, writeEdits } from './pin-edits.js'

/** What breaks, what else moves, and the word to settle it. */
export function MoveResult({
  move,
  plan,
  close,
}: {
  readonly move: LiftMove | 'none'
  readonly plan: Plan
  readonly close: () => void
}) {
  const [wrong, setWrong] = useState<string>()
  const { moving } = words
  if (move === 'none') return <p className="limit">{moving.noSuch}</p>
  const { lift, date, broken, days, finish, moved } = move
  const pin = async () => {
    const section = plan.campaign.days.flatMap(day => day.lifts).find(each => each.id === lift)?.section
    const name = section === undefined ? undefined : liftName(lift, section)
    if (!name) return setWrong(moving.noSuch)
    const problems = await writeEdits(raw => pinEdits(raw, name, date))
    if (problems.length > 0) return setWrong(problems.map(each => each.say).join(' '))
    close()
  }
  return (
    <div className="move-result" role="status">
      <h3>{moving.goes(lift, dayText(date))}</h3>
      {broken.length === 0 ? (
        <p>{moving.fits}</p>
      ) : (
        <ul className="limit">
          {broken.map(each => (
            <li key={each}>{each}</li>
          ))}
        </ul>
      )}
      <p>
        {[
          moving.days(days.before, days.after),
          moving.finish(dayText(finish.before), dayText(finish.after)),
          ...(moved.length === 0 ? [moving.none] : []),
        ].join('; ')}
        .
      </p>
      {moved.length > 0 && (
        <details open={moved.length <= 6}>
          <summary>{moving.others(moved.length)}</summary>
          <ul>
            {moved.map(each => (
              <li key={each.lift}>
                {each.lift}: {dayText(each.from)} → {each.to ? dayText(each.to) : moving.gone}
              </li>
            ))}
          </ul>
        </details>
      )}
      <p className="soft">{moving.caution}</p>
      {wrong && (
        <p className="limit" role="alert">
          {wrong}
        </p>
      )}
      <Group gap="sm">
        <Button onClick={() => void pin()}>{moving.pin}</Button>
        <Button variant="default" onClick={close}>
          {moving.leave}
        </Button>
      </Group>
    </div>
  )
}
