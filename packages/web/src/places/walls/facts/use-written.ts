import type { RawJob } from '@dawnlift/document/job'
import { useEffect, useState } from 'react'
import { reading } from '../../../import/index.js'
import { useApp } from '../../../state/index.js'

/** The document as its author wrote it; undefined while it is not readable. A moment behind the newest edit. */
export function useWritten(): RawJob | undefined {
  const text = useApp(state => state.files?.document)
  const [written, setWritten] = useState<RawJob>()
  useEffect(() => {
    let stale = false
    if (text !== undefined)
      void reading()
        .raw(text)
        .then(read => {
          if (!stale) setWritten(read.ok ? read.value : undefined)
        })
    return () => {
      stale = true
    }
  }, [text])
  return written
}
