import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { packageNames, root, sourcesOf } from './sources.js'

const text = (path: string) => readFileSync(join(root, path), 'utf8')
const references = readdirSync(join(root, 'docs/references'))
  .map(name => text(`docs/references/${name}`))
  .join('\n')
const listed = new Set([...references.matchAll(/^- `?\[([A-Za-z0-9.-]+)\]/gm)].map(match => match[1]!))

/** Rows of the tables: what, against, read, tolerance, where. */
const rows = text('docs/validation.md')
  .split('\n')
  .filter(line => line.startsWith('| ') && !/^\| (-|what )/.test(line))
  .map(line => {
    const [what = '', against = '', read = '', tolerance = '', where = ''] = line
      .slice(1, -1)
      .split(' | ')
      .map(cell => cell.trim())
    const files = quoted(where).map(path => (path.startsWith('../') ? path.slice(3) : `packages/${path}`))
    const titles = [...where.matchAll(/`: “(.+?)”(?= ?,|$)/g)].map(match => match[1]!)
    return { what, against, read, tolerance, files, titles }
  })

function quoted(cell: string): readonly string[] {
  return [...cell.matchAll(/`([^`]+)`/g)].map(match => match[1]!)
}

const installed = (name: string): string | undefined => {
  const path = `node_modules/${name}/package.json`
  return existsSync(join(root, path)) ? (JSON.parse(text(path)) as { version: string }).version : undefined
}

describe('docs/validation.md', () => {
  it('has its checks in tables', () => expect(rows.length).toBeGreaterThan(50))

  it.each(rows)('$what, against $against: says how it was read, how far it may lie off, and where', row => {
    expect([row.read, row.tolerance].every(cell => cell.length > 3)).toBe(true)
    expect(row.files.length).toBeGreaterThan(0)
    expect(row.files.filter(path => !existsSync(join(root, path)))).toEqual([])
  })

  it.each(rows)('$what: its tests still speak of $against', ({ against, files }) => {
    const told = files.map(text).join('\n')
    const keys = [...against.matchAll(/\[([A-Za-z0-9.-]+)\]/g)].map(match => match[1]!)
    expect(keys.filter(key => !listed.has(key))).toEqual([])
    expect(keys.filter(key => !told.includes(key))).toEqual([])
    // “scipy 1.17.1”: name and version stand in the test as they stand here.
    const marks = quoted(against).flatMap(mark => mark.split(' '))
    expect(marks.filter(word => !told.includes(word))).toEqual([])
  })

  it.each(rows.filter(({ titles }) => titles.length > 0))(
    '$what, against $against: the test it names by title is there',
    ({ titles, files }) => {
      const told = files.map(text).join('\n')
      const isTitle = (title: string) => ["'", '`'].some(quote => told.includes(`${quote}${title}${quote},`))
      expect(titles.filter(title => !isTitle(title))).toEqual([])
    },
  )

  it('names the libraries in the versions that are installed', () => {
    const libraries = rows
      .flatMap(row => quoted(row.against))
      .map(mark => mark.split(' '))
      .flatMap(([name = '', version]) => (installed(name) ? [{ name, version }] : []))
    expect(libraries.length).toBeGreaterThan(3)
    expect(libraries.filter(({ name, version }) => installed(name) !== version)).toEqual([])
  })

  it('names every test that compares with something outside', () => {
    const outside = /\b(published|independent)\b(?! (schema|section))/i
    const tests = packageNames
      .flatMap(name => sourcesOf(name))
      .filter(file => file.path.endsWith('.test.ts') && outside.test(file.text))
      .map(file => file.path)
    const named = new Set(rows.flatMap(row => row.files))
    expect(tests.filter(path => !named.has(path))).toEqual([])
  })
})
