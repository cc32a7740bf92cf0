import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { packageNames, root, sourcesOf } from './sources.js'

const folder = join(root, 'docs/references')
const listed = readdirSync(folder)
  .filter(name => name.endsWith('.md'))
  .flatMap(name =>
    [...readFileSync(join(folder, name), 'utf8').matchAll(/^- `?\[([A-Za-z0-9.-]+)\]/gm)].map(
      match => match[1]!,
    ),
  )
const known = new Set(listed)
const sources = packageNames.flatMap(name => sourcesOf(name))

/** `[Uno1998]`: a capital, letters, a year or a standard's number; not an array index or a character class. */
const cited = sources.flatMap(file =>
  [...file.text.matchAll(/\[([A-Z][A-Za-z]+[A-Za-z-]*\d{2,5}[a-z]?(?:-\d+)?)\]/g)].map(match => ({
    key: match[1]!,
    at: file.path,
  })),
)

describe('references', () => {
  it('list every key that the sources cite', () =>
    expect([
      ...new Set(cited.filter(({ key }) => !known.has(key)).map(({ key, at }) => `${key} in ${at}`)),
    ]).toEqual([]))

  it('list nothing that nobody cites', () => {
    const used = sources.map(file => file.text).join('\n')
    expect([...known].filter(key => !used.includes(key))).toEqual([])
  })

  it('say of each entry how it was read', () => {
    const lines = readdirSync(folder).flatMap(name => readFileSync(join(folder, name), 'utf8').split('\n'))
    const silent = lines.filter(
      line =>
        /^- `?\[/.test(line) &&
        !/second-hand|read directly|read in|from memory|derived|computed|own/i.test(line),
    )
    expect(silent).toEqual([])
  })
})

describe('the repository', () => {
  it.each(['README.md', 'docs/architecture.md', 'docs/nomenclature.md', 'docs/assumptions.md'])(
    'has %s',
    name => expect(existsSync(join(root, name))).toBe(true),
  )

  it('keeps its README within 120 lines', () =>
    expect(readFileSync(join(root, 'README.md'), 'utf8').split('\n').length).toBeLessThanOrEqual(121))

  it('has no source file over 300 lines', () =>
    expect(
      sources
        // Tables of recorded data are as long as what they record.
        .filter(file => !file.path.includes('/fixtures/') && file.text.split('\n').length > 301)
        .map(file => file.path),
    ).toEqual([]))
})
