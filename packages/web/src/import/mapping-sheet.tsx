import type { Point } from '@dawnlift/core/geometry'
import type { Problem } from '@dawnlift/core/result'
import { type DrawingUnit, editJob, type RawJob, rawJob } from '@dawnlift/document/job'
import { Button, Checkbox, Group, Radio } from '@mantine/core'
import { useEffect, useMemo, useState } from 'react'
import { useApp } from '../state/index.js'
import { words } from '../words/index.js'
import { DrawingPreview } from './drawing-preview.js'
import { layerCensus } from './layer-census.js'
import { LayerTable } from './layer-table.js'
import {
  type ImportChoice,
  type LayerChoice,
  mappingEdits,
  originFor,
  ownParts,
  standsAlone,
} from './mapping-edits.js'
import type { OpenedDrawing } from './open-drawing.js'
import { placedProblems } from './problem-places.js'
import { ProblemRows } from './problem-rows.js'
import { proposedChoices } from './proposed-choice.js'
import { reading } from './reading.js'
import type { ReadJob } from './reading.worker.js'
import { drawingUnits, sizeIn } from './unit-sizes.js'

/** Unit, layers, what comes of them, and the word to take it. */
export function MappingSheet({
  opened,
  close,
}: {
  readonly opened: OpenedDrawing
  readonly close: () => void
}) {
  const document = useApp(state => state.files?.document) ?? ''
  const raw = useMemo(() => rawJobOf(document), [document])
  const rows = useMemo(() => layerCensus(opened.drawing), [opened])
  const [unit, setUnit] = useState(opened.unit)
  const [clear, setClear] = useState(() => standsAlone(raw))
  const [layers, setLayers] = useState<Readonly<Record<string, LayerChoice>>>(() =>
    proposedChoices(rows, opened.drawing, raw),
  )
  const [active, setActive] = useState<number>()
  const metres = sizeIn(unit, { width: 1, height: 1 }).width / opened.drawing.metresPerUnit
  const scaled = (point: Point): Point => [point[0] * metres, point[1] * metres]
  const origin = originFor(scaled(opened.drawing.least), scaled(opened.drawing.most))
  const choice: ImportChoice = { file: opened.name, unit, layers, clear, ...(origin ? { origin } : {}) }
  const outcome = useOutcome(opened, document, raw, choice)
  const problems = placedProblems(outcome?.problems ?? [])
  const { drawing } = words.walls
  const accept = () => {
    if (!outcome?.text) return
    useApp.getState().edit(outcome.text, { [opened.name]: opened.content })
    close()
  }
  const own = ownParts(raw)
  return (
    <section className="sheet mapping" aria-label={drawing.title(opened.name)}>
      <h2>{drawing.title(opened.name)}</h2>
      <div className="mapping-pair">
        <div>
          <Units opened={opened} unit={unit} setUnit={setUnit} />
          <LayerTable rows={rows} drawing={opened.drawing} raw={raw} layers={layers} change={setLayers} />
          {own.length > 0 && (
            <Checkbox
              mt="sm"
              checked={clear}
              onChange={event => setClear(event.currentTarget.checked)}
              label={drawing.clear(own.map(([list, count]) => `${list} (${count})`).join(', '))}
            />
          )}
        </div>
        <DrawingPreview
          drawing={opened.drawing}
          layers={layers}
          problems={problems}
          active={active}
          toDrawing={point => [
            (point[0] + (origin?.[0] ?? 0)) / metres,
            (point[1] + (origin?.[1] ?? 0)) / metres,
          ]}
        />
      </div>
      <ProblemRows problems={problems} active={active} point={setActive} />
      <p role="status" aria-live="polite">
        {outcome?.gives}
      </p>
      {outcome && outcome.notes.length > 0 && (
        <details>
          <summary>{drawing.notes(outcome.notes.length)}</summary>
          <ul>
            {outcome.notes.map(note => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        </details>
      )}
      <Group gap="sm" className="doings">
        <Button disabled={!outcome?.ready} onClick={accept}>
          {drawing.accept}
        </Button>
        <Button variant="default" onClick={close}>
          {drawing.leave}
        </Button>
      </Group>
    </section>
  )
}

function Units({
  opened,
  unit,
  setUnit,
}: {
  readonly opened: OpenedDrawing
  readonly unit: DrawingUnit
  readonly setUnit: (unit: DrawingUnit) => void
}) {
  const { drawing } = words.walls
  const side = (value: number) => Number(value.toPrecision(3))
  return (
    <Radio.Group
      label={drawing.unit}
      description={drawing.unitHint}
      value={unit}
      onChange={value => setUnit(value as DrawingUnit)}
      mb="md"
    >
      <Group gap="lg" mt="xs">
        {drawingUnits.map(each => {
          const size = sizeIn(each, opened.size)
          const said = each === opened.said ? `, ${drawing.says}` : ''
          return (
            <Radio
              key={each}
              value={each}
              label={`${each}: ${side(size.width)} × ${side(size.height)} m${said}`}
            />
          )
        })}
      </Group>
    </Radio.Group>
  )
}

const rawJobOf = (document: string): RawJob => {
  const raw = rawJob(document)
  return raw.ok ? raw.value : {}
}

interface Outcome {
  /** The document as it would be. */
  readonly text?: string
  readonly ready: boolean
  readonly gives: string
  readonly notes: readonly string[]
  readonly problems: readonly Problem[]
}

/** Reads the job as it would be with the drawing in it: what is shown is what will be there. */
function useOutcome(
  opened: OpenedDrawing,
  document: string,
  raw: RawJob,
  choice: ImportChoice,
): Outcome | undefined {
  const [outcome, setOutcome] = useState<Outcome>()
  const key = JSON.stringify(choice)
  // biome-ignore lint/correctness/useExhaustiveDependencies: the choice is told by its text
  useEffect(() => {
    let stale = false
    const text = editJob(document, mappingEdits(raw, choice))
    const beside = { ...useApp.getState().files?.beside, [opened.name]: opened.content }
    const read = text.ok ? reading().job({ document: text.value, beside }) : Promise.resolve(text)
    void read.then(job => {
      if (stale) return
      setOutcome(
        job.ok && text.ok
          ? { text: text.value, ready: true, problems: [], ...told(job.value) }
          : { ready: false, gives: '', notes: [], problems: job.ok ? [] : job.problems },
      )
    })
    return () => {
      stale = true
    }
  }, [key, document, opened])
  return outcome
}

const told = ({ job, notes }: ReadJob) => ({
  gives: words.walls.drawing.gives(
    job.walls.length,
    job.openings.length,
    job.embeds.length,
    job.columns.length,
  ),
  notes: notes.map(note => note.say),
})
