import type { Problem } from '@dawnlift/core/result'
import { Button, Group } from '@mantine/core'
import { useState } from 'react'
import { useApp } from '../../../state/index.js'
import { words } from '../../../words/index.js'
import type { Draft } from '../draft.js'
import { applyEdits } from '../edits/apply-edits.js'
import { type Added, copyOf, newEmbed, newOpening } from '../edits/new-parts.js'
import { entryIndex } from '../edits/part-edits.js'
import { pickUp } from '../plan/carry.js'
import type { Hands } from '../plan/use-hands.js'
import { findThing, type Thing } from '../thing.js'
import { nameOf } from '../thing-text.js'
import { EmbedFacts } from './embed-facts.js'
import { OpeningFacts } from './opening-facts.js'
import { useWritten } from './use-written.js'
import { WallFacts } from './wall-facts.js'

/** What is chosen: its figures as fields, and what can be done with it. */
export function FactsStrip({
  draft,
  drawn,
  chosen,
  choose,
  hands,
  remove,
}: {
  readonly draft: Draft
  readonly drawn: ReadonlySet<string>
  readonly chosen: Thing | undefined
  readonly choose: (thing: Thing) => void
  readonly hands: Hands
  readonly remove: () => void
}) {
  const units = useApp(state => state.units)
  const [wrong, setWrong] = useState<readonly Problem[]>([])
  const written = useWritten()
  const found = findThing(hands.shown, chosen)
  if (!found || !chosen) return <p className="soft strip">{words.walls.nothingChosen}</p>
  const list = found.kind === 'wall' ? 'walls' : found.kind === 'opening' ? 'openings' : 'embeds'
  const own = written !== undefined && entryIndex(written, list, chosen.id) !== undefined
  const fromDrawing = drawn.has(chosen.id)
  const add = async (make: (raw: NonNullable<typeof written>) => Added | undefined) => {
    const added = written && make(written)
    if (!added) return
    const problems = await applyEdits(() => added.edits)
    setWrong(problems)
    if (problems.length === 0) choose(added.thing)
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
      </div>
      <Group gap="sm" className="doings">
        {found.kind === 'wall' ? (
          <>
            <Button
              variant="default"
              onClick={() => void add(raw => newOpening(raw, draft, chosen.id, 'window'))}
            >
              {words.walls.addWindow}
            </Button>
            <Button
              variant="default"
              onClick={() => void add(raw => newOpening(raw, draft, chosen.id, 'door'))}
            >
              {words.walls.addDoor}
            </Button>
            <Button variant="default" onClick={() => void add(raw => newEmbed(raw, draft, chosen.id))}>
              {words.walls.addEmbed}
            </Button>
          </>
        ) : hands.carry ? (
          <>
            <Button onClick={() => void hands.setDown()}>{words.walls.setDown}</Button>
            <Button variant="default" onClick={() => hands.setCarry(undefined)}>
              {words.walls.putBack}
            </Button>
          </>
        ) : (
          <>
            <Button
              variant="default"
              onClick={() => {
                hands.setCarry(pickUp(draft, chosen))
                document.getElementById('walls-plan')?.focus()
              }}
            >
              {words.walls.takeUp}
            </Button>
            <Button variant="default" onClick={() => void add(raw => copyOf(raw, draft, chosen, 'beside'))}>
              {words.walls.copy}
            </Button>
            <Button variant="default" onClick={() => void add(raw => copyOf(raw, draft, chosen, 'mirrored'))}>
              {words.walls.mirror}
            </Button>
          </>
        )}
        <Button variant="default" onClick={remove}>
          {own && fromDrawing ? words.walls.backToDrawing : words.walls.remove}
        </Button>
      </Group>
      {wrong.length > 0 && (
        <p className="limit" role="alert">
          {wrong.map(each => each.say).join(' ')}
        </p>
      )}
    </section>
  )
}
