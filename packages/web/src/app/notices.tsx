import { Button } from '@mantine/core'
import { isNewer, keepMine, takeTheirs, useApp } from '../state/index.js'
import { words } from '../words/index.js'

/** What one has to know of the document's way to disk; nothing at all when everything is well. */
export function Notices() {
  const saved = useApp(state => state.saved)
  const served = useApp(state => state.served)
  const refused = useApp(state => state.refused)
  const keeps = useApp(state => state.keeps)
  const files = useApp(state => state.files)
  const newer = useApp(state => isNewer(state.problems))
  if (newer)
    return (
      <div className="notice" role="status">
        <span>{words.newerJob}</span>
      </div>
    )
  if (saved === 'conflict')
    return (
      <div className="notice" role="alert">
        <span>{words.conflict}</span>
        <Button onClick={() => void keepMine()}>{words.keepMine}</Button>
        <Button variant="default" onClick={() => void takeTheirs()}>
          {words.takeTheirs}
        </Button>
      </div>
    )
  if (saved === 'local' && files)
    return (
      <div className="notice" role="status">
        <span>{words.openedInTab}</span>
        <Button variant="default" onClick={() => saveCopy(files.document)}>
          {words.saveCopy}
        </Button>
      </div>
    )
  if (refused.length > 0)
    return (
      <div className="notice" role="alert">
        <span>
          {words.serverRefuses} {refused.map(each => each.say).join(' ')}
        </span>
        {files && (
          <Button variant="default" onClick={() => saveCopy(files.document)}>
            {words.saveCopy}
          </Button>
        )}
      </div>
    )
  if (!keeps && saved !== 'saved')
    return (
      <div className="notice" role="alert">
        <span>{words.keepsNothing}</span>
        {files && (
          <Button variant="default" onClick={() => saveCopy(files.document)}>
            {words.saveCopy}
          </Button>
        )}
      </div>
    )
  if (!served)
    return (
      <div className="notice" role="status">
        <span>{words.serverAway}</span>
      </div>
    )
  return null
}

function saveCopy(document: string): void {
  const address = URL.createObjectURL(new Blob([document], { type: 'application/yaml' }))
  const link = window.document.createElement('a')
  link.href = address
  link.download = 'job.yaml'
  link.click()
  URL.revokeObjectURL(address)
}
