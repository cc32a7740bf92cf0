import type { LiftPin, Pin } from '@dawnlift/core/job'
import { closestName } from '@dawnlift/core/result'
import type { JobDocument } from './job-schema.js'
import type { Ledger } from './ledger.js'
import { nameList } from './name-list.js'

type Row = JobDocument['pins'][number]
type Path = readonly PropertyKey[]

/** The lead's pins, each one thing; those that contradict each other are problems. */
export function buildPins(document: JobDocument, ledger: Ledger): readonly Pin[] {
  const pins = document.pins.flatMap((row, index) => {
    checkSection(row, document, ['pins', index, 'section'], ledger)
    return buildPin(row, ['pins', index], ledger) ?? []
  })
  document.pins.forEach((row, index) => {
    checkAgainst(row, document.pins.slice(0, index), ['pins', index], ledger)
  })
  return pins
}

/** Sections divided by hand have their names here; the others get theirs when the walls are divided. */
function checkSection({ section }: Row, { sections }: JobDocument, at: Path, ledger: Ledger): void {
  const names = sections.map(({ id }) => id)
  if (names.length === 0 || names.includes(section)) return
  const near = closestName(section, names)
  const hint = near ? `did you mean “${near}”?` : `sections are ${nameList(names)}.`
  ledger.wrong('job/unknown-section', at, `The pin names section “${section}”, which is not there; ${hint}`)
}

function buildPin({ section, notOn, lift, on, layers, why }: Row, at: Path, ledger: Ledger): Pin | undefined {
  const words = why === undefined ? {} : { why }
  if (notOn) {
    if (lift === undefined && on === undefined && layers === undefined)
      return { kind: 'closed', section, dates: notOn, ...words }
    return ledger.wrong(
      'job/pin',
      at,
      `A pin says either on which dates section ${section} rests (“notOn”) or when one lift is printed (“lift” and “on”); make it two.`,
    )
  }
  if (lift === undefined || on === undefined)
    return ledger.wrong(
      'job/pin',
      at,
      `The pin of section ${section} says too little: write “notOn: [2026-07-14]”, or “lift: 2” and “on: 2026-07-14”.`,
    )
  if (!Number.isInteger(lift))
    return ledger.wrong('job/pin', [...at, 'lift'], `Lifts are counted 1, 2, 3; ${lift} is none.`)
  if (layers === undefined) return { kind: 'lift', section, lift, date: on, ...words }
  const range = layerRange(layers)
  if (range) return { kind: 'lift', section, lift, date: on, layers: range, ...words }
  return ledger.wrong(
    'job/pin-layers',
    [...at, 'layers'],
    `“${layers}” is no run of layers; write the first and the last, like “47 to 92”.`,
  )
}

function layerRange(text: string): LiftPin['layers'] {
  const found = /^\s*(\d{1,5})\s*(?:to|-|–)\s*(\d{1,5})\s*$/.exec(text)
  const [first, last] = [Number(found?.[1]), Number(found?.[2])]
  return found && first >= 1 && last >= first ? { first, last } : undefined
}

/** One lift has one day; a day has one lift of a section; and that day is not one on which it rests. */
function checkAgainst(row: Row, before: readonly Row[], at: Path, ledger: Ledger): void {
  for (const other of before) {
    if (other.section !== row.section) continue
    const say = clash(row, other) ?? clash(other, row)
    if (say) ledger.wrong('job/pins-clash', at, say)
  }
}

function clash(a: Row, b: Row): string | undefined {
  const { section, lift, on } = a
  if (lift === undefined || on === undefined) return undefined
  if (b.notOn?.includes(on))
    return `Lift ${lift} of section ${section} is pinned to ${on}, on which another pin lets the section rest; drop one of the two.`
  if (b.lift === undefined || b.on === undefined) return undefined
  if (b.lift === lift)
    return `Lift ${lift} of section ${section} is pinned twice, to ${b.on} and to ${on}; keep one.`
  if (b.on === on)
    return `Lifts ${b.lift} and ${lift} of section ${section} are both pinned to ${on}; a section has one lift a day.`
  return b.lift < lift && b.on > on
    ? `Lift ${lift} of section ${section} is pinned to ${on}, before lift ${b.lift} on ${b.on}; lifts go up one after the other.`
    : undefined
}
