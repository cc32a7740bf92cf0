import { type Result, success } from '@dawnlift/core/result'
import { editJob, type RawJob } from '@dawnlift/document/job'

const usualName = 'mix-tests.csv'

/** The file of tests that the job names, if it names one. */
export function testsFileOf({ mix }: RawJob): string | undefined {
  const tests = typeof mix === 'object' && mix !== null ? (mix as { tests?: unknown }).tests : undefined
  return typeof tests === 'string' ? tests : undefined
}

/** The document naming a file of tests: its own, or the usual one; what else it says of the mix stays. */
export function withTests(
  document: string,
  raw: RawJob,
): Result<{ readonly document: string; readonly file: string }> {
  const named = testsFileOf(raw)
  if (named) return success({ document, file: named })
  const isBlock = typeof raw.mix === 'object' && raw.mix !== null
  const edited = editJob(document, [
    isBlock
      ? { kind: 'set', path: ['mix', 'tests'], value: usualName }
      : { kind: 'set', path: ['mix'], value: { tests: usualName } },
  ])
  return edited.ok ? success({ document: edited.value, file: usualName }) : edited
}
