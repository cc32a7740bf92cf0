import type { Problem } from '@dawnlift/core/result'
import type { RawJob } from '@dawnlift/document/job'
import { Button, Group } from '@mantine/core'
import { useState } from 'react'
import { useApp } from '../../../state/index.js'
import { words } from '../../../words/index.js'
import type { Draft } from '../draft.js'
import { applyEdits } from '../edits/apply-edits.js'
import { arrayOf, copyOf } from '../edits/copies.js'
import { type Added, newColumn, newEmbed, newOpening } from '../edits/new-parts.js'
import { entryIndex } from '../edits/part-edits.js'
import { listOf } from '../edits/take-out.js'
import type { Hands } from '../plan/use-hands.js'
import { findThing, type Thing } from '../thing.js'
import { nameOf } from '../thing-text.js'
import { Again } from './again.js'
import { ColumnFacts } from './column-facts.js'
import { EmbedFacts } from './embed-facts.js'
import { LintelFacts } from './lintel-facts.js'
import { OpeningFacts } from './opening-facts.js'
import { useWritten } from './use-written.js'
import { WallFacts } from './wall-facts.js'
import './facts.css'

/** What is chosen: its figures as fields, and what can be done with it. */
export function FactsStrip({
  draft,
  drawn,
  chosen,
  choose,
  hands,
  remove,
  asDrawn,
}: {
  readonly draft: Draft
  readonly drawn: ReadonlySet<string>
  readonly chosen: Thing | undefined
  readonly choose: (thing: Thing) => void
  readonly hands: Hands
  readonly remove: () => void
  /** Takes back what the job says of a drawn thing. */
  readonly asDrawn: () => void
}) {
  const units = useApp(state => state.units)
  const [wrong, setWrong] = useState<readonly Problem[]>([])
  const written = useWritten()
  const found = findThing(hands.shown, chosen)
  if (!found || !chosen) return <p className="soft strip">{words.walls.nothingChosen}</p>
  const own = written !== undefined && entryIndex(written, listOf(chosen.kind), chosen.id) !== undefined
  const fromDrawing = drawn.has(chosen.id)
  const add = async (make: (raw: RawJob) => Added | undefined) => {
    let added: Added | undefined
    const problems = await applyEdits(raw => {
      added = make(raw)
      return added?.edits ?? []
    })
    setWrong(problems)
    if (added && problems.length === 0) choose(added.thing)
  }
  return (
    <section className="strip" aria-label={nameOf(draft, chosen)}>
      <Group gap="md" align="baseline">
        <h2>{nameOf(draft, chosen)}</h2>
        {fromDrawing && <span className="soft">{own ? words.walls.changedPart : words.walls.drawnPart}</span>}
      </Group>
      <div className="facts-row">
        {found.kind === 'wall' && <WallFacts wall={found.part} units={units} draft={draft} />}
        {found.kind === 'opening' && (
          <OpeningFacts opening={found.part} units={units} layerHeight={draft.print.layerHeight} />
        )}
        {found.kind === 'embed' && (
          <EmbedFacts embed={found.part} units={units} layerHeight={draft.print.layerHeight} />
        )}
        {found.kind === 'column' && <ColumnFacts column={found.part} units={units} />}
        {found.kind === 'lintel' && <LintelFacts opening={found.part} units={units} />}
      </div>
      <Group gap="sm" className="doings">
        {hands.inHand ? (
          <>
            <Button onClick={() => void hands.setDown()}>{words.walls.setDown}</Button>
            <Button variant="default" onClick={hands.putBack}>
              {words.walls.putBack}
            </Button>
          </>
        ) : (
          <Button
            variant="default"
            onClick={() => {
              hands.takeUp()
              document.getElementById('walls-plan')?.focus()
            }}
          >
            {words.walls.takeUp}
          </Button>
        )}
        {found.kind === 'wall' && <Additions wall={chosen.id} draft={draft} add={add} />}
        {found.kind !== 'lintel' && (
          <>
            <Button variant="default" onClick={() => void add(raw => copyOf(raw, draft, chosen, 'beside'))}>
              {words.walls.copy}
            </Button>
            <Button variant="default" onClick={() => void add(raw => copyOf(raw, draft, chosen, 'mirrored'))}>
              {words.walls.mirror}
            </Button>
          </>
        )}
        {fromDrawing && own && (
          <Button variant="default" onClick={asDrawn}>
            {words.walls.backToDrawing}
          </Button>
        )}
        <Button variant="default" onClick={remove}>
          {words.walls.remove}
        </Button>
      </Group>
      {found.kind !== 'lintel' && (
        <Again
          units={units}
          found={found}
          make={(times, every) => add(raw => arrayOf(raw, draft, chosen, { times, every }))}
        />
      )}
      {wrong.length > 0 && (
        <p className="limit" role="alert">
          {wrong.map(each => each.say).join(' ')}
        </p>
      )}
    </section>
  )
}

/** What can be put into a wall. */
function Additions({
  wall,
  draft,
  add,
}: {
  readonly wall: string
  readonly draft: Draft
  readonly add: (make: (raw: RawJob) => Added | undefined) => Promise<void>
}) {
  const { addWindow, addDoor, addEmbed, addColumn } = words.walls
  return (
    <>
      <Button variant="default" onClick={() => void add(raw => newOpening(raw, draft, wall, 'window'))}>
        {addWindow}
      </Button>
      <Button variant="default" onClick={() => void add(raw => newOpening(raw, draft, wall, 'door'))}>
        {addDoor}
      </Button>
      <Button variant="default" onClick={() => void add(raw => newEmbed(raw, draft, wall))}>
        {addEmbed}
      </Button>
      <Button variant="default" onClick={() => void add(raw => newColumn(raw, draft, wall))}>
        {addColumn}
      </Button>
    </>
  )
}
