import type { Column } from '@dawnlift/core/job'
import { LengthField } from '../../../parts/index.js'
import { words } from '../../../words/index.js'
import { applyEdits } from '../edits/apply-edits.js'
import { lengthText, type Units } from '../edits/length-text.js'
import { changeEdits } from '../edits/part-edits.js'
import { columnEntry } from '../edits/part-entry.js'

const { facts } = words.walls

export const ColumnFacts = ({ column, units }: { readonly column: Column; readonly units: Units }) =>
  (['at', 'length', 'thickness', 'cover'] as const).map(key => (
    <LengthField
      key={key}
      label={facts[key]}
      value={lengthText(column[key], units)}
      commit={text =>
        applyEdits(raw =>
          changeEdits(raw, 'columns', column.id, { [key]: text }, () => columnEntry(column, units)),
        )
      }
    />
  ))
