import dxfParser, { type IDxf, type IEntity } from 'dxf-parser'

// The package's types describe a module with a class in it; what is imported at run time is the class itself.
const DxfParser = dxfParser as unknown as typeof dxfParser.DxfParser

export interface Group {
  readonly code: number
  readonly value: unknown
}

/** The part of the parser's scanner that entity handlers use. */
interface Scanner {
  readonly next: () => Group
  readonly isEOF: () => boolean
}

/** An entity with all its groups, in their order. */
export interface GroupedEntity extends IEntity {
  readonly groups: readonly Group[]
}

/**
 * A handler that keeps every group. For entities of which the parser drops what we need (weights of splines, attributes),
 * and for polylines, where a damaged file sends the parser's own handlers into a loop without end.
 */
function groupHandler(name: string) {
  return class {
    readonly ForEntityName = name
    parseEntity(scanner: Scanner, first: Group): unknown {
      const groups: Group[] = []
      let group = scanner.next()
      while (!scanner.isEOF() && group.code !== 0) {
        groups.push(group)
        group = scanner.next()
      }
      const one = (code: number) => groups.find(each => each.code === code)?.value
      return { type: first.value, layer: one(8), handle: one(5), inPaperSpace: one(67) === 1, groups }
    }
  }
}

const groupedNames = ['SPLINE', 'ATTRIB', 'LWPOLYLINE', 'POLYLINE', 'VERTEX']

/** The parsed file; polylines, splines and attributes come as `GroupedEntity`. Throws what the parser throws. */
export function parseDxf(text: string): IDxf {
  const parser = new DxfParser()
  type Handler = Parameters<typeof parser.registerEntityHandler>[0]
  // The parser's types know only its own entity names; at run time it dispatches on any.
  for (const name of groupedNames) parser.registerEntityHandler(groupHandler(name) as unknown as Handler)
  const parsed = parser.parseSync(text)
  if (!parsed) throw new Error('nothing could be read from it')
  return parsed
}

export const isGrouped = (entity: IEntity): entity is GroupedEntity => 'groups' in entity

export const numbersOf = (entity: GroupedEntity, code: number): readonly number[] =>
  entity.groups.filter(group => group.code === code).map(group => Number(group.value))

export const textOf = (entity: GroupedEntity, code: number): string =>
  String(entity.groups.find(group => group.code === code)?.value ?? '')

/** Whether a bit of the entity's flags (code 70) is set. */
export const hasFlag = (entity: GroupedEntity, bit: number): boolean =>
  ((numbersOf(entity, 70)[0] ?? 0) & bit) !== 0
