import type { Opening } from '@dawnlift/core/job'
import { ChoiceField, LengthField } from '../../../parts/index.js'
import { words } from '../../../words/index.js'
import { applyEdits } from '../edits/apply-edits.js'
import { lengthText, type Units } from '../edits/length-text.js'
import { changeEdits, type Entry } from '../edits/part-edits.js'
import { openingEntry } from '../edits/part-entry.js'

const { facts, lintels } = words.walls

export function LintelFacts({ opening, units }: { readonly opening: Opening; readonly units: Units }) {
  const { lintel } = opening
  if (!lintel) return null
  const change = (changed: Entry) =>
    applyEdits(raw =>
      changeEdits(raw, 'openings', opening.id, { lintel: lintelEntry(lintel, units, changed) }, () =>
        openingEntry(opening, units),
      ),
    )
  return (
    <>
      <ChoiceField
        label={facts.lintelKind}
        value={lintel.kind}
        options={(['precast', 'steel', 'timber'] as const).map(value => ({ value, label: lintels[value] }))}
        commit={kind => change({ kind })}
      />
      <LengthField
        label={facts.lintel}
        value={lengthText(lintel.height, units)}
        commit={text => change({ height: text })}
      />
      <LengthField
        label={facts.bearing}
        value={lengthText(lintel.bearing, units)}
        commit={text => change({ bearing: text })}
      />
    </>
  )
}

const lintelEntry = (lintel: NonNullable<Opening['lintel']>, units: Units, changed: Entry): Entry => ({
  kind: lintel.kind,
  height: lengthText(lintel.height, units),
  bearing: lengthText(lintel.bearing, units),
  ...changed,
})
