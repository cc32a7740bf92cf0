import type { Problem } from '@dawnlift/core/result'
import { Button, FileButton } from '@mantine/core'
import { useEffect, useState } from 'react'
import { ProblemList } from '../parts/index.js'
import { words } from '../words/index.js'
import { MappingSheet } from './mapping-sheet.js'
import { type OpenedDrawing, openDrawing } from './open-drawing.js'
import './import.css'

type State =
  | { readonly kind: 'idle' }
  | { readonly kind: 'reading'; readonly name: string }
  | { readonly kind: 'unreadable'; readonly name: string; readonly problems: readonly Problem[] }
  | { readonly kind: 'open'; readonly opened: OpenedDrawing }

/** Takes a drawing from a file dialog or dropped anywhere on the page, and leads it into the job. */
export function ImportDrawing() {
  const [state, setState] = useState<State>({ kind: 'idle' })
  const { drawing } = words.walls
  const take = async (file: File | null | undefined) => {
    if (!file) return
    setState({ kind: 'reading', name: file.name })
    const content = new Uint8Array(await file.arrayBuffer())
    const opened = await openDrawing(file.name, content)
    setState(
      opened.ok
        ? { kind: 'open', opened: opened.value }
        : { kind: 'unreadable', name: file.name, problems: opened.problems },
    )
  }
  const over = useDrop(take)
  return (
    <section className="import" aria-label={drawing.open}>
      <div className={`import-drop${over ? ' over' : ''}`}>
        <FileButton accept=".dxf,.DXF" onChange={file => void take(file)}>
          {props => (
            <Button {...props} variant="default" size="md">
              {drawing.open}
            </Button>
          )}
        </FileButton>
        <span className="soft">{state.kind === 'reading' ? drawing.reading(state.name) : drawing.drop}</span>
      </div>
      {state.kind === 'unreadable' && (
        <div role="alert">
          <p>{drawing.unreadable(state.name)}</p>
          <ProblemList problems={state.problems} />
          <Button variant="default" onClick={() => setState({ kind: 'idle' })}>
            {drawing.leave}
          </Button>
        </div>
      )}
      {state.kind === 'open' && (
        <MappingSheet opened={state.opened} close={() => setState({ kind: 'idle' })} />
      )}
    </section>
  )
}

/** True while a file hangs over the page; hands it on when it falls. */
function useDrop(take: (file: File | undefined) => Promise<void>): boolean {
  const [over, setOver] = useState(false)
  // biome-ignore lint/correctness/useExhaustiveDependencies: `take` only sets state; one pair of listeners serves for good
  useEffect(() => {
    const hover = (event: DragEvent) => {
      if (!event.dataTransfer?.types.includes('Files')) return
      event.preventDefault()
      setOver(true)
    }
    const leave = (event: DragEvent) => {
      if (event.relatedTarget === null) setOver(false)
    }
    const drop = (event: DragEvent) => {
      event.preventDefault()
      setOver(false)
      void take(event.dataTransfer?.files[0])
    }
    document.addEventListener('dragover', hover)
    document.addEventListener('dragleave', leave)
    document.addEventListener('drop', drop)
    return () => {
      document.removeEventListener('dragover', hover)
      document.removeEventListener('dragleave', leave)
      document.removeEventListener('drop', drop)
    }
  }, [])
  return over
}
