import type { Wall } from '@dawnlift/core/job'
import { ChoiceField, LengthField } from '../../../parts/index.js'
import { words } from '../../../words/index.js'
import type { Draft } from '../draft.js'
import { applyEdits } from '../edits/apply-edits.js'
import { lengthText, type Units } from '../edits/length-text.js'
import { changeEdits, type Entry } from '../edits/part-edits.js'
import { wallEntry } from '../edits/part-entry.js'
import { layerHint } from './layer-hint.js'
import { WallEnds } from './wall-ends.js'

const { facts, makeUps, webs } = words.walls

export function WallFacts({
  wall,
  units,
  draft,
}: {
  readonly wall: Wall
  readonly units: Units
  readonly draft: Draft
}) {
  const change = (changes: Entry) =>
    applyEdits(raw => changeEdits(raw, 'walls', wall.id, changes, () => wallEntry(wall, units)))
  /** One bead is as thick as the bead; two wythes need room for a web between them. */
  const remake = (makeUp: Wall['makeUp']['kind']) => {
    const { beadWidth } = draft.print
    const thick =
      makeUp === 'single'
        ? beadWidth
        : makeUp === 'double'
          ? Math.max(wall.thickness, 4 * beadWidth)
          : wall.thickness
    return change({ makeUp, thickness: lengthText(thick, units) })
  }
  return (
    <>
      <ChoiceField
        label={facts.makeUp}
        value={wall.makeUp.kind}
        options={(['double', 'single', 'solid'] as const).map(value => ({ value, label: makeUps[value] }))}
        commit={remake}
      />
      {wall.makeUp.kind === 'double' && (
        <ChoiceField
          label={facts.web}
          value={wall.makeUp.web}
          options={(['zigzag', 'crosstie', 'wave'] as const).map(value => ({ value, label: webs[value] }))}
          commit={web => change({ web })}
        />
      )}
      <LengthField
        label={facts.thickness}
        value={lengthText(wall.thickness, units)}
        commit={text => change({ thickness: text })}
      />
      <LengthField
        label={facts.top}
        value={lengthText(wall.top - wall.base, units)}
        hint={layerHint(wall.top, draft.print.layerHeight, units)}
        commit={text => change({ height: text })}
      />
      <WallEnds wall={wall} units={units} draft={draft} />
    </>
  )
}
