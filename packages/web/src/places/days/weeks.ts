import type { PrintDay } from '@dawnlift/core/campaign'
import { addDays, weekday } from '@dawnlift/core/clock'

/** One day of the board, printed on or not. */
export interface BoardDay {
  readonly date: string
  readonly works: boolean
  readonly day?: PrintDay
}

/** Weeks from Monday to Sunday that hold the campaign, and one more to move lifts into. */
export function weeksOf(
  days: readonly PrintDay[],
  works: (date: string) => boolean,
): readonly (readonly BoardDay[])[] {
  const [first, last] = [days[0]?.date, days.at(-1)?.date]
  if (!first || !last) return []
  const byDate = new Map(days.map(day => [day.date, day]))
  const weeks: BoardDay[][] = []
  for (
    let monday = addDays(first, 1 - weekday(first));
    monday <= addDays(last, 7);
    monday = addDays(monday, 7)
  )
    weeks.push(
      Array.from({ length: 7 }, (_, index) => {
        const date = addDays(monday, index)
        const day = byDate.get(date)
        return { date, works: works(date), ...(day ? { day } : {}) }
      }),
    )
  return weeks
}
