import { copyFileSync, cpSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { emptyFolder, gardenWall, run } from '../packages/cli/src/collecting-screen.js'
import { root } from './sources.js'

const text = (file: string) => readFileSync(join(root, file), 'utf8')

/** The commands of a document's `sh` blocks, as words; quotes and comments as a shell reads them. */
const commandsOf = (document: string): readonly (readonly string[])[] =>
  [...document.matchAll(/```sh\n(.*?)```/gs)]
    .flatMap(block => block[1]!.split('\n'))
    .map(line => /^(?:npm run dawnlift -- |dawnlift )(.*)$/.exec(line)?.[1]?.replace(/\s+#.*$/, ''))
    .flatMap(line =>
      line ? [[...line.matchAll(/(?:[^\s"]|"[^"]*")+/g)].map(([word]) => word.replaceAll('"', ''))] : [],
    )

const sheet = /```csv\n(.*?)```/s.exec(text('docs/guide/machine-trials.md'))![1]!

/** A folder in which the documents' commands find what they speak of: the house stands for itself once, then for the small wall. */
function stage(): { readonly folder: string; readonly remove: () => void } {
  const { folder, remove } = emptyFolder()
  for (const name of ['tests.csv', 'mix-tests.csv'])
    copyFileSync(join(root, 'examples/torrenubia/mix-tests.csv'), join(folder, name))
  writeFileSync(join(folder, 'trials.csv'), sheet)
  cpSync(join(root, 'examples/finch-lane'), join(folder, 'my-lane'), { recursive: true })
  return { folder, remove }
}

/** What a document shows for its own job, as it is for the small wall: the date of a machine file, and fewer years. */
function suited(word: string, index: number, words: readonly string[], folder: string): string {
  if (words[index - 1] === '--years') return '12'
  if (words[index - 1] === '--port') return '0'
  // The small wall begins in June.
  if (!word.startsWith('files/machine/')) return word.replace(/^2026-05-05/, '2026-06-02')
  return join(
    'files/machine',
    readdirSync(join(folder, 'files/machine')).find(name => name.endsWith('-A1.ngc'))!,
  )
}

const pages = [
  'README.md',
  ...readdirSync(join(root, 'docs/guide'))
    .map(name => `docs/guide/${name}`)
    .filter(file => text(file).includes('```sh')),
]

/** Commands that ask somebody outside: a test only looks whether they take these words. */
const asksOutside = new Set(['forecast'])

describe.each(pages)('the commands of %s', file => {
  const commands = commandsOf(text(file))
  const { folder, remove } = stage()
  afterAll(remove)

  it('are there', () => expect(commands.length).toBeGreaterThan(0))

  it.each(
    commands.filter(words => asksOutside.has(words[0]!)).map(words => [words.join(' '), words] as const),
  )('%s, as far as its words go', async (_, words) => {
    const { code, out } = await run([...words, '--help'], folder)
    expect(code).toBe(0)
    for (const flag of words.filter(word => word.startsWith('--'))) expect(out).toContain(flag)
  })

  it.each(
    commands.filter(words => !asksOutside.has(words[0]!)).map(words => [words.join(' '), words] as const),
  )(
    '%s',
    async (_, words) => {
      const given = words[0] === 'serve' && !words.includes('--port') ? [...words, '--port', '0'] : words
      const { code, out, err } = await run(
        given.map((word, index) => suited(word, index, given, folder)),
        folder,
        (heard, stop) => heard.includes('Dawnlift is open') && stop(),
      )
      expect([code, err]).toEqual([0, expect.not.stringContaining('problem')])
      if (!['serve', 'resume'].includes(words[0]!)) expect(out).not.toBe('')
      if (words[0] === 'new') {
        rmSync(join(folder, 'my-house'), { recursive: true })
        cpSync(gardenWall, join(folder, 'my-house'), { recursive: true })
      }
    },
    180_000,
  )
})

describe('the guide to commands', () => {
  it('has an example of every command there is', async () => {
    const { out } = await run(['--help'], root)
    const known = [...out.matchAll(/^ {2}([a-z]+) (?:\[options\]|<)/gm)].map(match => match[1]!)
    const shown = new Set(commandsOf(text('docs/guide/commands.md')).map(words => words[0]))
    expect(known.length).toBeGreaterThan(10)
    expect(known.filter(name => !shown.has(name))).toEqual([])
  })
})
