import type { Instant } from '@dawnlift/core/quantity'
import type { Call } from '@dawnlift/core/trade'

/** What the trades have said yes to, by call: the moment they agreed to be there. */
export type Confirmed = Readonly<Record<string, Instant>>

export type Agreement = 'open' | 'confirmed' | 'moved'

/** A re-plan that moves a call by no more than this leaves the word given. */
const slack = 15 * 60

export function agreementOn(call: Pick<Call, 'id' | 'from'>, confirmed: Confirmed): Agreement {
  const agreed = confirmed[call.id]
  if (agreed === undefined) return 'open'
  return Math.abs(agreed - call.from) <= slack ? 'confirmed' : 'moved'
}

export function withAgreement(
  confirmed: Confirmed,
  call: Pick<Call, 'id' | 'from'>,
  agreed: boolean,
): Confirmed {
  if (agreed) return { ...confirmed, [call.id]: call.from }
  const { [call.id]: _, ...rest } = confirmed
  return rest
}

const slotOf = (job: string): string => `dawnlift.confirmed.${job}`

export function readConfirmed(job: string, storage: Pick<Storage, 'getItem'>): Confirmed {
  try {
    const read: unknown = JSON.parse(storage.getItem(slotOf(job)) ?? '{}')
    if (typeof read !== 'object' || read === null || Array.isArray(read)) return {}
    return Object.fromEntries(Object.entries(read).filter(([, at]) => typeof at === 'number')) as Confirmed
  } catch {
    return {}
  }
}

export function keepConfirmed(job: string, confirmed: Confirmed, storage: Pick<Storage, 'setItem'>): boolean {
  try {
    storage.setItem(slotOf(job), JSON.stringify(confirmed))
    return true
  } catch {
    return false
  }
}
