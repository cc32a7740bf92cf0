import type { Opening } from '@dawnlift/core/job'
import { ChoiceField, LengthField } from '../../../parts/index.js'
import { words } from '../../../words/index.js'
import { applyEdits } from '../edits/apply-edits.js'
import { lengthText, type Units } from '../edits/length-text.js'
import { changeEdits, type Entry } from '../edits/part-edits.js'
import { openingEntry } from '../edits/part-entry.js'
import { layerHint } from './layer-hint.js'
import { LintelFacts } from './lintel-facts.js'

const { facts, kinds } = words.walls

export function OpeningFacts({
  opening,
  units,
  layerHeight,
}: {
  readonly opening: Opening
  readonly units: Units
  readonly layerHeight: number
}) {
  const change = (changes: Entry) =>
    applyEdits(raw => changeEdits(raw, 'openings', opening.id, changes, () => openingEntry(opening, units)))
  const length = (key: 'at' | 'width' | 'sill' | 'head', hint?: string) => (
    <LengthField
      label={facts[key]}
      value={lengthText(opening[key], units)}
      commit={text => change({ [key]: text })}
      {...(hint ? { hint } : {})}
    />
  )
  return (
    <>
      <ChoiceField
        label={facts.kind}
        value={opening.kind}
        options={(['window', 'door', 'passage'] as const).map(value => ({ value, label: kinds[value] }))}
        commit={kind => change({ kind, sill: lengthText(opening.sill, units) })}
      />
      {length('at')}
      {length('width')}
      {length('sill', layerHint(opening.sill, layerHeight, units))}
      {length('head', layerHint(opening.head, layerHeight, units))}
      {opening.lintel && <LintelFacts opening={opening} units={units} />}
    </>
  )
}
