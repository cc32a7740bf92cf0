import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { allFormulas } from '../packages/core/src/registry/index.js'
import {
  type FormulaParameter,
  formulaSheets,
  formulaFunctions as functionsOfFormulas,
} from './formula-functions.js'
import { root } from './sources.js'

const formulaFunctions = functionsOfFormulas()
const folder = join(root, 'docs/references')
const references = readdirSync(folder)
  .map(name => readFileSync(join(folder, name), 'utf8'))
  .join('\n')
const listed = new Set([...references.matchAll(/^- `?\[([A-Za-z0-9.-]+)\]/gm)].map(match => match[1]!))

/** Types that are their own unit: `Metres`, `Celsius`, `Share`. */
const units = new Set(
  [
    ...readFileSync(join(root, 'packages/core/src/quantity/unit-aliases.ts'), 'utf8').matchAll(
      /export type (\w+) = number/g,
    ),
  ].map(match => match[1]!),
)

/** What stands above `Source`, without the parameters: words and formula. */
const statement = (doc: string) => doc.split(/\bSource\b/)[0]!.replace(/^\s*\*\s*@param.*$/gm, '')
const parameterLine = (doc: string, name: string) =>
  new RegExp(`@param\\s+${name}\\b[^@]*?\\[[^\\]]+\\]`).test(doc)

/** A number speaks its unit by its type, by its row in the doc, or by the words beside the field of its record. */
function silentParameters(doc: string, { name, type, fields }: FormulaParameter): readonly string[] {
  if (units.has(type) || parameterLine(doc, name)) return []
  if (type === 'number') return [name]
  return fields
    .filter(field => field.type.includes('number') && !/\[[^\]]+\]|share|factor|ratio/i.test(field.doc))
    .map(field => `${name}.${field.name}`)
}

describe('formula functions', () => {
  it('are found behind every sheet of formulas', () =>
    expect(
      formulaSheets.filter(sheet => {
        const domain = sheet.slice(root.length).split('/').slice(0, -1).join('/')
        return !formulaFunctions.some(each => each.path.startsWith(domain))
      }),
    ).toEqual([]))

  it.each(formulaFunctions)('$name ($path) states its formula, source, range and assumptions', ({ doc }) => {
    expect(statement(doc)).toMatch(/[=√]|\S·\S| [+−] /)
    for (const word of ['Source', 'Range', 'Assumes']) expect(doc).toMatch(new RegExp(`\\b${word}\\s`))
  })

  it.each(formulaFunctions)(
    '$name names a source that the references list, or says it has none',
    ({ doc }) => {
      const source = /\bSource\s([\s\S]*?)(\bRange\s|$)/.exec(doc)?.[1] ?? ''
      const keys = [...source.matchAll(/\[([A-Za-z0-9.-]+)\]/g)].map(match => match[1]!)
      expect(keys.filter(key => !listed.has(key))).toEqual([])
      expect(
        keys.length > 0 || /closed form|mass balance|common practice, no source|derived/i.test(source),
      ).toBe(true)
    },
  )

  it.each(formulaFunctions)('$name gives the unit of each number it takes', ({ doc, parameters }) =>
    expect(parameters.flatMap(parameter => silentParameters(doc, parameter))).toEqual([]),
  )
})

describe('the registry of formulas', () => {
  it('cites nothing that the references do not list', () =>
    expect(
      allFormulas
        .flatMap(({ name, source }) =>
          [...source.matchAll(/\[([A-Za-z0-9.-]+)\]/g)].map(match => ({ name, key: match[1]! })),
        )
        .filter(({ key }) => !listed.has(key)),
    ).toEqual([]))

  it('holds every formula of every sheet', () => {
    const written = formulaSheets.flatMap(sheet =>
      [...readFileSync(sheet, 'utf8').matchAll(/^\s+name: '([a-z0-9-]+)',\n\s+says:/gm)].map(
        match => match[1]!,
      ),
    )
    const known = new Set(allFormulas.map(each => each.name))
    expect(written.length).toBeGreaterThan(60)
    expect(written.filter(name => !known.has(name))).toEqual([])
  })
})
