import { type RawJob, rawJob } from '@dawnlift/document/job'
import { useMemo } from 'react'
import { useApp } from '../../../state/index.js'

/** The document as its author wrote it; undefined while it is not readable. */
export function useWritten(): RawJob | undefined {
  const text = useApp(state => state.files?.document)
  return useMemo(() => {
    const raw = text === undefined ? undefined : rawJob(text)
    return raw?.ok ? raw.value : undefined
  }, [text])
}
