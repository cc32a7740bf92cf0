import { describe, expect, it } from 'vitest'
import { type ReportedCommand, reportJsonSchema, reportSchemas } from './index.js'

interface Node {
  readonly type?: string
  readonly description?: string
  readonly properties?: Readonly<Record<string, Node>>
  readonly items?: Node
  readonly prefixItems?: readonly Node[]
  readonly anyOf?: readonly Node[]
}

/** The units a name may end with; `docs/guide/commands.md` lists them. */
const units =
  /_(m|mm|m2|m3|kg|L|s|h|d|Pa|W|C|K|rad|m_per_s|m3_per_s|rad_per_s|Pa_s|Pa_per_s|Pa_per_s2|per_s|per_h|per_m3_per_s|kg_per_m3|J_per_kg|perM2)$/
const unitless = /^(Share of one|Factor|Pump setting|Money|Number of)/

/** Fields that hold numbers with fractions, and neither name nor neighbour nor description tells the unit of them. */
function silent(node: Node, path: string, beside: Readonly<Record<string, Node>> = {}): readonly string[] {
  const name = path.split('.').at(-1) ?? ''
  const told =
    units.test(name) ||
    unitless.test(node.description ?? '') ||
    beside.unit !== undefined ||
    beside[`${name}Unit`] !== undefined
  if ('const' in node) return []
  if (node.type === 'number') return told ? [] : [path]
  // What a list holds is told by the name of the list.
  const inside = [node.items, ...(node.prefixItems ?? []), ...(node.anyOf ?? [])].flatMap(each =>
    each ? silent({ ...each, description: each.description ?? node.description ?? '' }, path, beside) : [],
  )
  const fields = Object.entries(node.properties ?? {}).flatMap(([key, field]) =>
    silent(field, `${path}.${key}`, node.properties),
  )
  return [...inside, ...fields]
}

describe('a report for other programs', () => {
  it.each(Object.keys(reportSchemas) as ReportedCommand[])(
    'of %s tells the unit of every number: in its name, beside it, or that it has none',
    command => expect(silent(reportJsonSchema(command) as Node, command)).toEqual([]),
  )
  it('says what it is, and in which version', () => {
    for (const [command, schema] of Object.entries(reportSchemas)) {
      expect(schema.shape.format.value).toBe(`dawnlift-${command}`)
      expect(schema.shape.version.value).toBe(1)
    }
  })
})
