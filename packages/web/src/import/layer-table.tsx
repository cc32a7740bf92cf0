import type { LayerUse, RawJob } from '@dawnlift/document/job'
import type { Drawing } from '@dawnlift/formats/dxf'
import { NativeSelect, TextInput } from '@mantine/core'
import { words } from '../words/index.js'
import { blockTypes, type LayerRow } from './layer-census.js'
import type { LayerChoice, NewWallType } from './mapping-edits.js'
import { choiceOf, firstMakeUp, typesFor } from './proposed-choice.js'

type Layers = Readonly<Record<string, LayerChoice>>
const uses = ['walls', 'openings', 'embeds', 'columns', 'names', 'ignore'] as const
const fresh = '(new)'

/** What each layer holds, and what it becomes. */
export function LayerTable({
  rows,
  drawing,
  raw,
  layers,
  change,
}: {
  readonly rows: readonly LayerRow[]
  readonly drawing: Drawing
  readonly raw: RawJob
  readonly layers: Layers
  readonly change: (layers: Layers) => void
}) {
  const told = words.walls.drawing
  return (
    <table className="plain layers">
      <caption>{told.layers}</caption>
      <thead>
        <tr>
          <th scope="col">{told.layer}</th>
          <th scope="col">{told.holds}</th>
          <th scope="col">{told.is}</th>
          <th scope="col">{told.type}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(row => {
          const choice = layers[row.layer] ?? { is: 'ignore' }
          const set = (next: LayerChoice) => change({ ...layers, [row.layer]: next })
          return (
            <tr key={row.layer}>
              <th scope="row">{row.layer}</th>
              <td>{told.contents(row.lines, row.blocks, row.texts)}</td>
              <td>
                <NativeSelect
                  aria-label={`${row.layer}: ${told.is}`}
                  value={choice.is}
                  data={uses.map(value => ({ value, label: told.uses[value] }))}
                  onChange={event => set(choiceOf(event.currentTarget.value as LayerUse['is'], raw))}
                />
              </td>
              <td>
                <TypeCell
                  layer={row.layer}
                  types={blockTypes(drawing, row.layer)}
                  raw={raw}
                  choice={choice}
                  set={set}
                />
              </td>
            </tr>
          )
        })}
      </tbody>
    </table>
  )
}

function TypeCell({
  layer,
  types,
  raw,
  choice,
  set,
}: {
  readonly layer: string
  /** Types that blocks on the layer name themselves. */
  readonly types: readonly string[]
  readonly raw: RawJob
  readonly choice: LayerChoice
  readonly set: (choice: LayerChoice) => void
}) {
  const told = words.walls.drawing
  const { is } = choice
  const known = typesFor(raw, is)
  if (!known)
    return is === 'ignore' && types.length > 0 ? (
      <span className="soft">{told.namesTypes(types.join(', '))}</span>
    ) : null
  const none =
    is === 'walls'
      ? { value: fresh, label: told.newType }
      : {
          value: '',
          label: types.length > 0 ? `${told.typeFromBlock}: ${types.join(', ')}` : told.typeFromBlock,
        }
  return (
    <div className="type-cell">
      <NativeSelect
        aria-label={`${layer}: ${told.type}`}
        value={choice.type ?? none.value}
        data={[...known.map(value => ({ value, label: value })), none]}
        onChange={event => {
          const { value } = event.currentTarget
          set(value === fresh ? { is, fresh: firstMakeUp(raw) } : value === '' ? { is } : { is, type: value })
        }}
      />
      {choice.fresh && <NewType layer={layer} type={choice.fresh} set={type => set({ is, fresh: type })} />}
    </div>
  )
}

function NewType({
  layer,
  type,
  set,
}: {
  readonly layer: string
  readonly type: NewWallType
  readonly set: (type: NewWallType) => void
}) {
  const { drawing, makeUps } = words.walls
  return (
    <>
      <NativeSelect
        aria-label={`${layer}: ${drawing.makeUp}`}
        value={type.makeUp}
        data={(['double', 'single', 'solid'] as const).map(value => ({ value, label: makeUps[value] }))}
        onChange={event => set({ ...type, makeUp: event.currentTarget.value as NewWallType['makeUp'] })}
      />
      {type.makeUp !== 'single' && (
        <TextInput
          aria-label={`${layer}: ${drawing.thickness}`}
          value={type.thickness}
          onChange={event => set({ ...type, thickness: event.currentTarget.value })}
        />
      )}
      <TextInput
        aria-label={`${layer}: ${drawing.height}`}
        value={type.height}
        onChange={event => set({ ...type, height: event.currentTarget.value })}
      />
    </>
  )
}
