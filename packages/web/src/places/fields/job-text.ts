import { type RawJob, rawJob } from '@dawnlift/document/job'
import { useMemo } from 'react'
import { useApp } from '../../state/index.js'

const nothing: RawJob = {}

/** The document's text and its plain data; empty while it cannot be read as YAML. */
export function useJobText(): { readonly document: string; readonly raw: RawJob } {
  const document = useApp(state => state.files?.document ?? '')
  const raw = useMemo(() => {
    const read = rawJob(document)
    return read.ok ? read.value : nothing
  }, [document])
  return { document, raw }
}
