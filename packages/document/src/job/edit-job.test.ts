import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseDocument } from 'yaml'
import { documentVersion, editJob, jobJsonSchema, newJobText, parseJob } from './index.js'
import { migrations } from './migrations.js'
import { migrate } from './read-document.js'

const fixture = (name: string) => readFileSync(new URL(`./fixtures/${name}.yaml`, import.meta.url), 'utf8')

const edited = (text: string, ...edits: Parameters<typeof editJob>[1]) => {
  const result = editJob(text, edits)
  if (!result.ok) throw new Error(result.problems[0]?.say)
  return result.value
}

describe('editJob', () => {
  const text = newJobText('Shed')
  it('changes nothing when there is nothing to change', () => expect(edited(text)).toBe(text))
  const changed = (after: string) => {
    const before = text.split('\n')
    return after.split('\n').filter(line => !before.includes(line))
  }
  it('changes one line and keeps its comment', () =>
    expect(changed(edited(text, { kind: 'set', path: ['rules', 'liftHeight'], value: '800 mm' }))).toEqual([
      '  liftHeight: 800 mm                 # tallest lift of one section in one go',
    ]))
  it('moves an embed inside its line', () =>
    expect(changed(edited(text, { kind: 'set', path: ['embeds', 0, 'at'], value: '2.9 m' }))).toEqual([
      '  - { id: E1, wall: W1, kind: box, trade: electrical, face: left, at: 2.9 m, bottom: 1.1 m, width: 70 mm, height: 80 mm, depth: 50 mm }',
    ]))
  it('adds a rule, a block that was not there, and an attribute to an entry', () =>
    expect(
      changed(
        edited(
          text,
          { kind: 'set', path: ['rules', 'restMost'], value: '20 min' },
          { kind: 'set', path: ['batching', 'chiller'], value: { temperature: '6 °C', rate: '350 kg/h' } },
          { kind: 'set', path: ['openings', 1, 'lintel', 'height'], value: '0\' 4"' },
        ),
      ),
    ).toEqual([
      `  - { id: F1, wall: W1, kind: window, at: 10.8 m, width: 1.2 m, sill: 900 mm, head: 2.1 m, lintel: { height: 0' 4" } }`,
      '  restMost: 20 min',
      'batching: { chiller: { temperature: 6 °C, rate: 350 kg/h } }',
    ]))
  it('begins a list of things with a line each, and a larger block with a line a key', () =>
    expect(
      changed(
        edited(
          text.replace(/^embeds:[\s\S]*?\n\n/m, ''),
          { kind: 'set', path: ['columns'], value: [{ id: 'K1', wall: 'W1', at: '2 m' }] },
          { kind: 'set', path: ['columns', 1], value: { id: 'K2', wall: 'W1', at: '4 m' } },
          {
            kind: 'set',
            path: ['drawing'],
            value: { file: 'plan.dxf', unit: 'mm', layers: { A: { is: 'walls' } } },
          },
        ),
      ),
    ).toEqual([
      'columns:',
      '  - { id: K1, wall: W1, at: 2 m }',
      '  - { id: K2, wall: W1, at: 4 m }',
      'drawing:',
      '  file: plan.dxf',
      '  unit: mm',
      '  layers: { A: { is: walls } }',
    ]))
  it('adds an embed to the list and takes it away again', () => {
    const embed = {
      id: 'E2',
      wall: 'W1',
      kind: 'box',
      trade: 'electrical',
      face: 'left',
      at: '5 m',
      bottom: '300 mm',
      width: '70 mm',
      height: '70 mm',
      depth: '50 mm',
    }
    const added = edited(text, { kind: 'set', path: ['embeds', 1], value: embed })
    const read = parseJob(added)
    expect(read.ok && read.value.job.embeds.map(each => each.id)).toEqual(['E1', 'E2'])
    expect(edited(added, { kind: 'remove', path: ['embeds', 1] })).toBe(text)
  })
  it('says the same as the library’s own edit, whatever is set or removed', () => {
    const document = parseDocument(text)
    const paths: (string | number)[][] = []
    const walk = (value: unknown, path: (string | number)[]) => {
      if (path.length > 0) paths.push(path)
      if (Array.isArray(value)) value.forEach((inner, i) => void walk(inner, [...path, i]))
      else if (typeof value === 'object' && value !== null)
        for (const [key, inner] of Object.entries(value)) walk(inner, [...path, key])
    }
    walk(document.toJS(), [])
    const value = fc.oneof(
      fc.string(),
      fc.constantFrom('8\' 1 1/2"', '32 °C', 'a: b', '# x', '- y', '5:00', 'yes', ''),
      fc.dictionary(fc.constantFrom('a', 'b'), fc.string()),
    )
    fc.assert(
      fc.property(fc.constantFrom(...paths), value, fc.boolean(), (path, put, remove) => {
        const after = edited(text, remove ? { kind: 'remove', path } : { kind: 'set', path, value: put })
        const own = parseDocument(text)
        if (remove) own.deleteIn(path)
        else own.setIn(path, own.createNode(put))
        expect(parseDocument(after).toJS()).toEqual(own.toJS())
        // Setting or removing a block takes the comments inside it along; a plain value takes none.
        const scalar = typeof document.getIn(path) !== 'object'
        const comments = (of: string) => of.match(/ # |^#/gm)?.length ?? 0
        if (scalar && !remove) expect(comments(after)).toBeGreaterThanOrEqual(comments(text))
      }),
      { numRuns: 40 },
    )
  })
  it('refuses a path through a plain value', () => {
    const result = editJob(text, [{ kind: 'set', path: ['name', 'first'], value: 'x' }])
    expect(result.ok ? [] : result.problems.map(each => each.code)).toEqual(['job/edit'])
  })
})

describe('migrations', () => {
  it('lead in single steps from the first draft to the present version', () => {
    expect(migrations.map(step => [step.from, step.to])).toEqual(
      Array.from({ length: documentVersion }, (_, i) => [i, i + 1]),
    )
  })
  it.each(migrations.map(step => [step.from, step.to]))(
    'from %d to %d give the document kept as a fixture, comments and all',
    (from, to) => {
      const before = fixture(`migration-${from}-to-${to}-before`)
      expect(migrate(before, from).text).toBe(fixture(`migration-${from}-to-${to}-after`))
    },
  )
  it('are told to the reader of an old document', () => {
    const read = parseJob(fixture('migration-0-to-1-before'))
    expect(read.ok && [read.value.job.print.layerHeight, read.value.migrated.length]).toEqual([0.018, 1])
  })
})

describe('jobJsonSchema', () => {
  it('leaves no field without a type', () => {
    const untyped: string[] = []
    const walk = (node: unknown, path: string) => {
      if (typeof node !== 'object' || node === null) return
      for (const [key, inner] of Object.entries(node)) {
        const fields =
          key === 'properties' && typeof inner === 'object' && inner !== null ? Object.entries(inner) : []
        for (const [name, field] of fields)
          if (!['type', 'anyOf', 'const', 'enum'].some(word => Object.hasOwn(Object(field), word)))
            untyped.push(`${path}/${name}`)
        walk(inner, `${path}/${key}`)
      }
    }
    walk(jobJsonSchema(), '')
    expect(untyped).toEqual([])
  })
  const schema = jobJsonSchema() as {
    properties: Record<string, unknown>
    required: string[]
    additionalProperties: boolean
  }
  it('asks for what has no default and allows no unknown key', () => {
    expect(schema.required).toEqual(['dawnlift', 'name', 'site', 'calendar', 'weather'])
    expect(schema.additionalProperties).toBe(false)
  })
  it('describes quantities as text with a default', () => {
    expect(JSON.stringify(schema.properties.rules)).toContain(
      '"liftHeight":{"default":"1 m","description":"length with its unit, like 2.46 m","type":"string"}',
    )
  })
})
