import { limitName } from '@dawnlift/core/campaign'
import type { Plan } from '@dawnlift/core/plan'
import { dayText } from '@dawnlift/drawing/paper'
import { useMemo } from 'react'
import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'
import { type LiftChange, type LimitChanges, limitChanges } from './limit-changes.js'

const mostLifts = 4

/** What the last edit did to the limits: lifts that lost or won layers, and the finish. */
export function ChangeLine({ plan }: { readonly plan: Plan }) {
  const planning = useApp(state => state.planning !== undefined)
  const heldDays = useApp(state => state.heldDays)
  // The plan shown may be a blink behind the one that was made.
  const isBehind = useApp(state => state.plan !== plan)
  const before = useApp(state => state.before)
  const changes = useMemo(
    () => (before && before !== plan ? limitChanges(before, plan) : undefined),
    [before, plan],
  )
  const { changed } = words.walls
  return (
    <p className="change" role="status" aria-live="polite" data-testid="change-line">
      {isBehind || (planning && heldDays !== 'searching') ? (
        <span className="soft">{changed.working}</span>
      ) : (
        changes && (
          <>
            <span className="soft">{changed.lead}: </span>
            {sayChanges(changes)}
            {heldDays && <span className="soft">. {words.heldDays[heldDays]}</span>}
          </>
        )
      )}
    </p>
  )
}

export function sayChanges({ lifts, finish, days }: LimitChanges): string {
  const { changed } = words.walls
  const shown = lifts.slice(0, mostLifts).map(sayLift)
  const more = lifts.length > mostLifts ? [changed.more(lifts.length - mostLifts)] : []
  const moved =
    finish.before === finish.after
      ? changed.finishSame
      : changed.finish(dayText(finish.before), dayText(finish.after))
  const number = days.before === days.after ? [] : [changed.days(days.before, days.after)]
  return [[...(shown.length > 0 ? shown : [changed.none]), ...more].join(', '), moved, ...number].join('; ')
}

function sayLift({ lift, before, after, nowBound }: LiftChange): string {
  const { changed } = words.walls
  if (before === undefined) return changed.fresh(lift, after ?? 0)
  if (after === undefined) return changed.gone(lift)
  if (before !== after) return changed.layers(lift, before, after)
  return changed.limit(lift, nowBound ? limitName(nowBound.kind) : '')
}
