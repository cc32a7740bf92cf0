import type { SectionWork } from './campaign.js'

/** A lintel that rests on this section and on another: before layer `at` + 1 goes on, the other stands `least` layers. */
export interface SharedEnd {
  readonly at: number
  readonly other: number
  readonly least: number
}

/**
 * Lift ends that two sections have in common, by section number. A lintel is cut into both the evening before and set the next
 * morning, so neither section goes on above it before both stand up to it at the start of a day.
 */
export function sharedEnds(work: readonly SectionWork[]): readonly (readonly SharedEnd[])[] {
  return work.map(({ liftEnds }, s) =>
    liftEnds.flatMap(end =>
      work.flatMap((one, other) =>
        other === s
          ? []
          : one.liftEnds
              .filter(({ ref, reason }) => ref === end.ref && reason === end.reason)
              .map(({ afterLayer }) => ({ at: end.afterLayer, other, least: afterLayer })),
      ),
    ),
  )
}

/** Whether a section has to wait for its neighbour before it may go on above a lintel they share. */
export const isHeldBack = (ends: readonly SharedEnd[], heights: readonly number[], height: number): boolean =>
  ends.some(({ at, other, least }) => at === height && heights[other]! < least)
