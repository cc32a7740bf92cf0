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

const mark = '# left out: '

/** The line that a place in the file of tests names: `mix-tests.csv:7` is its seventh. */
export const lineOfTest = (at: string): number => Number(/:(\d+)$/.exec(at)?.[1] ?? Number.NaN)

/** The tests with one line turned into a remark: it stays to be read, and to be counted again. */
export const withoutTest = (text: string, line: number): string =>
  withLine(text, line, old => (old.startsWith(mark) || line < 2 ? old : mark + old))

export const withTestAgain = (text: string, line: number): string =>
  withLine(text, line, old => (old.startsWith(mark) ? old.slice(mark.length) : old))

/** Tests that were left out, with their line. */
export const testsLeftOut = (text: string): readonly { readonly line: number; readonly test: string }[] =>
  text
    .split('\n')
    .flatMap((each, index) =>
      each.startsWith(mark) ? [{ line: index + 1, test: each.slice(mark.length).trimEnd() }] : [],
    )

const withLine = (text: string, line: number, change: (old: string) => string): string =>
  text
    .split('\n')
    .map((each, index) => (index === line - 1 ? change(each) : each))
    .join('\n')
