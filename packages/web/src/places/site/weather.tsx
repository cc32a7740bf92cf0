import { Button, FileButton, Group } from '@mantine/core'
import { type DragEvent, useState } from 'react'
import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'
import { standingOf, useJobText } from '../fields/index.js'
import { weatherDropped } from './weather-drop.js'

/** Where the weather comes from, and a place to put a better one. */
export function Weather() {
  const { raw } = useJobText()
  const notes = useApp(state => state.weatherNotes)
  const [said, setSaid] = useState<{ readonly ok: boolean; readonly text: string }>()
  const [over, setOver] = useState(false)
  const source = standingOf(raw, ['weather', 'source']).value
  const file = standingOf(raw, ['weather', 'file']).value
  const take = async (dropped: File | null) => {
    if (!dropped) return
    const content = new Uint8Array(await dropped.arrayBuffer())
    const document = useApp.getState().files?.document ?? ''
    const taken = weatherDropped(document, dropped.name, new TextDecoder().decode(content))
    if (!taken.ok) return setSaid({ ok: false, text: taken.problems.map(problem => problem.say).join(' ') })
    useApp.getState().edit(taken.value.document, { [dropped.name]: content })
    setSaid({ ok: true, text: `${taken.value.says}.` })
  }
  const drop = (event: DragEvent) => {
    event.preventDefault()
    event.stopPropagation()
    setOver(false)
    void take(event.dataTransfer.files[0] ?? null)
  }
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping has a button beside it for the keyboard
    <div
      className={over ? 'drop over' : 'drop'}
      onDragOver={event => {
        event.preventDefault()
        setOver(true)
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      <Group gap="md">
        <span>
          {words.site.weatherFrom} <strong>{String(file ?? source ?? words.monthlyMeans)}</strong>
        </span>
        <FileButton onChange={file => void take(file)} accept=".epw,.csv">
          {props => (
            <Button variant="default" {...props}>
              {words.site.otherWeather}
            </Button>
          )}
        </FileButton>
        <span className="soft">{words.dropWeather}</span>
      </Group>
      {said && (
        <p role="status" className={said.ok ? 'soft' : 'limit'}>
          {said.text}
        </p>
      )}
      {notes.length > 0 && (
        <details>
          <summary>{words.site.oddities(notes.length)}</summary>
          <ul>
            {notes.slice(0, 50).map(note => (
              <li key={`${note.at} ${note.code}`}>
                <code>{note.at}</code> {note.say}
              </li>
            ))}
          </ul>
        </details>
      )}
    </div>
  )
}
