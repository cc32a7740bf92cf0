import type { Plan } from '@dawnlift/core/plan'

/** A piece of a plan under its number. A number never stands for two values. */
export interface Parcel {
  readonly number: number
  readonly value: unknown
}

/** A plan with its heavy parts left out: their numbers stand for them. */
export interface PackedPlan {
  readonly rest: Plan
  readonly bands: readonly (readonly number[])[]
  readonly routes: readonly (readonly number[])[]
  readonly hours: readonly number[]
  readonly cure: readonly number[]
}

/** Hours to a piece: four days of them. */
const hoursTogether = 96
/** Pieces to a message: what of them is unpacked at once stays below a blink. */
const parcelsTogether = 8

/**
 * Packs plans for another thread, which unpacks every message in one task: pieces that the last plan had are not sent
 * again, the others go a handful at a time.
 */
export function planPacker() {
  let sent = new Map<object, number>()
  let last = 0
  return (plan: Plan): { readonly packed: PackedPlan; readonly messages: readonly (readonly Parcel[])[] } => {
    const now = new Map<object, number>()
    const fresh: Parcel[] = []
    const numberOf = (value: object): number => {
      const known = now.get(value) ?? sent.get(value)
      const number = known ?? ++last
      if (known === undefined) fresh.push({ number, value })
      now.set(value, number)
      return number
    }
    const packed = {
      rest: {
        ...plan,
        bands: plan.bands.map(each => ({ ...each, bands: [] })),
        routes: plan.routes.map(each => ({ ...each, routes: [] })),
        campaign: { ...plan.campaign, hours: [] },
        cure: [],
      },
      bands: plan.bands.map(each => each.bands.map(numberOf)),
      routes: plan.routes.map(each => each.routes.map(numberOf)),
      hours: inGroups(plan.campaign.hours, hoursTogether).map(numberOf),
      cure: plan.cure.map(numberOf),
    }
    sent = now
    return { packed, messages: inGroups(fresh, parcelsTogether) }
  }
}

/** Puts plans together again. A piece that comes once is the same object in every plan that has it. */
export function planUnpacker() {
  let had = new Map<number, unknown>()
  return {
    take: (parcels: readonly Parcel[]): void => {
      for (const { number, value } of parcels) had.set(number, value)
    },
    plan: ({ rest, bands, routes, hours, cure }: PackedPlan): Plan => {
      const used = new Set([...bands.flat(), ...routes.flat(), ...hours, ...cure])
      const newest = Math.max(0, ...used)
      const piece = <T>(number: number): T => had.get(number) as T
      const plan: Plan = {
        ...rest,
        bands: rest.bands.map((each, index) => ({ ...each, bands: bands[index]?.map(piece<never>) ?? [] })),
        routes: rest.routes.map((each, index) => ({
          ...each,
          routes: routes[index]?.map(piece<never>) ?? [],
        })),
        campaign: { ...rest.campaign, hours: hours.flatMap(piece<Plan['campaign']['hours']>) },
        cure: cure.map(piece<Plan['cure'][number]>),
      }
      // Pieces of the plan after this one may be here already.
      had = new Map([...had].filter(([number]) => used.has(number) || number > newest))
      return plan
    },
  }
}

const groups = new WeakMap<readonly unknown[], readonly (readonly unknown[])[]>()

/** The same groups for the same list. */
function inGroups<T>(list: readonly T[], size: number): readonly (readonly T[])[] {
  const known = groups.get(list)
  if (known) return known as readonly (readonly T[])[]
  const made = Array.from({ length: Math.ceil(list.length / size) }, (_, index) =>
    list.slice(index * size, (index + 1) * size),
  )
  groups.set(list, made)
  return made
}
