import type { PrintRules } from '../job/index.js'
import { sayQuantity, type Units } from '../limit/index.js'
import type { Metres } from '../quantity/index.js'
import { assert } from '../result/index.js'
import type { Band } from './bead.js'

type ThinPlace = Band['thinPlaces'][number]

/** What is wrong where beads do not do what the plan asks, and what helps. */
export function sayThinPlace(place: ThinPlace, { beadWidth: width }: PrintRules, units: Units): string {
  const said = (length: Metres) => sayQuantity(length * 1000, 'mm', units)
  switch (place.kind) {
    case 'thin':
      return `a ${said(width)} bead does not fit here; widen the wall or move the opening`
    case 'doubled':
      return `two beads need ${said(place.need ?? 2 * width)}, less is there: they lie on each other; make the wall thicker`
    case 'void':
      return 'the beads leave a hollow here; fill it by hand or open the angle'
    case 'recess':
      return sayRecess(place, said(width), said)
  }
}

function sayRecess({ recess }: ThinPlace, bead: string, said: (length: Metres) => string): string {
  assert(recess, 'a recess says what it leaves')
  const { ref, left, interrupted } = recess
  const found = `${ref} leaves ${said(left)} of wall`
  return interrupted
    ? `${found}, less than a ${bead} bead: the wall is interrupted here; make ${ref} shallower`
    : `${found}, too little for two ${bead} beads: one wythe stops at its sides; make ${ref} shallower or the wall thicker`
}
