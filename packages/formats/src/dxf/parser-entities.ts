import dxfParser, { type IDxf, type IEntity } from 'dxf-parser'

// The package's types describe a module with a class in it; what is imported at run time is the class itself.
const DxfParser = dxfParser as unknown as typeof dxfParser.DxfParser

interface Group {
  readonly code: number
  readonly value: unknown
}

/** The part of the parser's scanner that entity handlers use. */
interface Scanner {
  readonly next: () => Group
  readonly isEOF: () => boolean
}

type Values = ReadonlyMap<number, readonly unknown[]>

/** An entity with all its groups kept by code. */
export interface GroupedEntity extends IEntity {
  readonly groups: Values
}

/** A handler that keeps every group: for entities of which the parser drops what we need (weights, attributes). */
function groupHandler(name: string) {
  return class {
    readonly ForEntityName = name
    parseEntity(scanner: Scanner, first: Group): unknown {
      const groups = new Map<number, unknown[]>()
      let group = scanner.next()
      while (!scanner.isEOF() && group.code !== 0) {
        groups.set(group.code, [...(groups.get(group.code) ?? []), group.value])
        group = scanner.next()
      }
      const one = (code: number) => groups.get(code)?.[0]
      return { type: first.value, layer: one(8), handle: one(5), inPaperSpace: one(67) === 1, groups }
    }
  }
}

/** The parsed file; SPLINE and ATTRIB come as `GroupedEntity`. Throws what the parser throws. */
export function parseDxf(text: string): IDxf {
  const parser = new DxfParser()
  type Handler = Parameters<typeof parser.registerEntityHandler>[0]
  // The parser's types know only its own entity names; at run time it dispatches on any.
  for (const name of ['SPLINE', 'ATTRIB'])
    parser.registerEntityHandler(groupHandler(name) as unknown as Handler)
  const parsed = parser.parseSync(text)
  if (!parsed) throw new Error('nothing could be read from it')
  return parsed
}

export const isGrouped = (entity: IEntity): entity is GroupedEntity => 'groups' in entity

export const numbersOf = (entity: GroupedEntity, code: number): readonly number[] =>
  (entity.groups.get(code) ?? []).map(Number)

export const textOf = (entity: GroupedEntity, code: number): string =>
  String(entity.groups.get(code)?.[0] ?? '')
