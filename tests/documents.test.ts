import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { packageNames, root, sourcesOf, stylesOf } from './sources.js'

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

describe('the nomenclature', () => {
  const rows = readFileSync(join(root, 'docs/nomenclature.md'), 'utf8')
    .split('\n')
    .filter(line => /^\| [a-z]/.test(line) && !line.startsWith('| quantity'))
    .map(line => line.split('|').map(cell => cell.trim()))

  it('names nothing that the code no longer has', () => {
    const core = sourcesOf('core')
      .map(file => file.text)
      .join('\n')
    const names = rows.flatMap(row => [...(row[2] ?? '').matchAll(/`(\w+)`/g)].map(match => match[1]!))
    expect(names.length).toBeGreaterThan(40)
    expect(names.filter(name => !new RegExp(`\\b${name}\\b`).test(core))).toEqual([])
  })
  it('gives every quantity its unit', () =>
    expect(rows.filter(row => (row[4] ?? '') === '').map(row => row[1])).toEqual([]))
})

describe('the guide', () => {
  const pages = readdirSync(join(root, 'docs/guide'))
  const home = readFileSync(join(root, 'docs/guide/commands.md'), 'utf8')
  const readme = readFileSync(join(root, 'README.md'), 'utf8')

  it('links to nothing that is not there', () => {
    const links = [...pages.map(name => `docs/guide/${name}`), 'README.md'].flatMap(page =>
      [...readFileSync(join(root, page), 'utf8').matchAll(/\]\(([^)#]+?)(?:#[^)]*)?\)/g)]
        .map(match => match[1]!)
        .filter(link => !/^https?:/.test(link))
        .map(link => join(root, page, '..', link)),
    )
    expect(links.filter(path => !existsSync(path))).toEqual([])
  })
  it('has no page that neither README nor another page leads to', () => {
    const all = [readme, home, ...pages.map(name => readFileSync(join(root, 'docs/guide', name), 'utf8'))]
    expect(
      pages.filter(name => !all.some(text => text.includes(`(${name})`) || text.includes(`guide/${name})`))),
    ).toEqual([])
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
      [...sources, ...packageNames.flatMap(stylesOf)]
        // Tables of recorded data are as long as what they record.
        .filter(file => !file.path.includes('/fixtures/') && file.text.split('\n').length > 301)
        .map(file => file.path),
    ).toEqual([]))
})
