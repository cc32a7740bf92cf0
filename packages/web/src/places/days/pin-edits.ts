import type { LiftPin } from '@dawnlift/core/job'
import type { Problem } from '@dawnlift/core/result'
import type { JobEdit, RawJob } from '@dawnlift/document/job'

interface Row {
  readonly section?: unknown
  readonly lift?: unknown
}

const rowsOf = ({ pins }: RawJob): readonly Row[] => (Array.isArray(pins) ? (pins as readonly Row[]) : [])

const rowOf = (raw: RawJob, { section, lift }: Pick<LiftPin, 'section' | 'lift'>): number =>
  rowsOf(raw).findIndex(row => String(row?.section) === section && Number(row?.lift) === lift)

/** Section and number of a lift: `B3` of section B is its third. */
export function liftName(id: string, section: string): Pick<LiftPin, 'section' | 'lift'> | undefined {
  const lift = id.startsWith(section) ? Number(id.slice(section.length)) : Number.NaN
  return Number.isInteger(lift) && lift > 0 ? { section, lift } : undefined
}

/** The lift settled on a date; one that was pinned before goes to the new one. */
export function pinEdits(
  raw: RawJob,
  pin: Pick<LiftPin, 'section' | 'lift'>,
  date: string,
): readonly JobEdit[] {
  const row = rowOf(raw, pin)
  return row >= 0
    ? [{ kind: 'set', path: ['pins', row, 'on'], value: date }]
    : [{ kind: 'set', path: ['pins', rowsOf(raw).length], value: { ...pin, on: date } }]
}

export function unpinEdits(raw: RawJob, pin: Pick<LiftPin, 'section' | 'lift'>): readonly JobEdit[] {
  const row = rowOf(raw, pin)
  if (row < 0) return []
  return [{ kind: 'remove', path: rowsOf(raw).length === 1 ? ['pins'] : ['pins', row] }]
}

/** Writes into the job. What reads and writes it is fetched only now: the days are seen far more often than pinned. */
export async function writeEdits(make: (raw: RawJob) => readonly JobEdit[]): Promise<readonly Problem[]> {
  const { applyEdits } = await import('../walls/edits/apply-edits.js')
  return applyEdits(make)
}
