import { Button } from '@mantine/core'
import { useEffect, useState } from 'react'
import { useApp } from '../state/index.js'
import { words } from '../words/index.js'

const isJob = (name: string): boolean => /\.ya?ml$/i.test(name)

/** A job dropped on the page opens in this tab, with whatever was dropped together with it; the server's job stays as it is. */
export function DropJob() {
  const [over, setOver] = useState(false)
  const [useless, setUseless] = useState<readonly string[]>([])
  useEffect(() => {
    const carriesFiles = (event: DragEvent) => event.dataTransfer?.types.includes('Files') === true
    const hover = (event: DragEvent) => {
      if (!carriesFiles(event)) return
      event.preventDefault()
      setOver(true)
    }
    const leave = (event: DragEvent) => {
      if (!event.relatedTarget) setOver(false)
    }
    const drop = (event: DragEvent) => {
      setOver(false)
      if (!carriesFiles(event)) return
      // Whatever it is, the browser must not leave the page for it.
      event.preventDefault()
      void openDropped([...(event.dataTransfer?.files ?? [])]).then(setUseless)
    }
    // A place that takes a drop of its own stops it before it comes here, but the veil has to go all the same.
    const lift = () => setOver(false)
    window.addEventListener('dragover', hover)
    window.addEventListener('dragleave', leave)
    window.addEventListener('drop', lift, true)
    window.addEventListener('drop', drop)
    return () => {
      window.removeEventListener('dragover', hover)
      window.removeEventListener('dragleave', leave)
      window.removeEventListener('drop', lift, true)
      window.removeEventListener('drop', drop)
    }
  }, [])
  if (over) return <div className="veil">{words.dropJob}</div>
  if (useless.length === 0) return null
  return (
    <div className="notice dropped" role="alert">
      <span>{words.droppedUseless(useless.join(', '))}</span>
      <Button variant="default" onClick={() => setUseless([])}>
        {words.understood}
      </Button>
    </div>
  )
}

/** What the places themselves take when it is dropped on them. */
const takenElsewhere = /\.(dxf|epw|csv)$/i

/** Opens the first job among the files; without one nothing changes. Answers with the names of files nobody here can use. */
export async function openDropped(files: readonly File[]): Promise<readonly string[]> {
  const job = files.find(file => isJob(file.name))
  if (!job) return files.map(file => file.name).filter(name => !takenElsewhere.test(name))
  const beside = await Promise.all(
    files
      .filter(file => file !== job)
      .map(async file => [file.name, new Uint8Array(await file.arrayBuffer())] as const),
  )
  useApp.getState().open({ document: await job.text(), beside: Object.fromEntries(beside) })
  return []
}
