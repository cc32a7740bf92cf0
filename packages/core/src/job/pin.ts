/** What the lead has settled, whatever would be soonest. Lifts are counted from the slab, those standing included. */
export type Pin = ClosedPin | LiftPin

/** A section is not printed on these dates. */
export interface ClosedPin {
  readonly kind: 'closed'
  readonly section: string
  readonly dates: readonly string[]
  /** The lead's own words. */
  readonly why?: string
}

/** The section's lift of this number is printed on this date; with `layers`, just those. */
export interface LiftPin {
  readonly kind: 'lift'
  readonly section: string
  readonly lift: number
  readonly date: string
  readonly layers?: { readonly first: number; readonly last: number }
  readonly why?: string
}

/** What counts first when the days are chosen. */
export type Aim = 'soonest' | 'cheapest' | 'calmest'
