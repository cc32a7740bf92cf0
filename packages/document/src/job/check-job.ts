import { pathLength } from '@dawnlift/core/geometry'
import type { Column, Embed, ManualSection, Opening, Wall } from '@dawnlift/core/job'
import { closestName } from '@dawnlift/core/result'
import type { Ledger } from './ledger.js'
import { nameList } from './name-list.js'

export interface JobParts {
  readonly walls: readonly Wall[]
  readonly openings: readonly Opening[]
  readonly embeds: readonly Embed[]
  readonly columns: readonly Column[]
  readonly sections: readonly ManualSection[]
  readonly noCutAt: readonly string[]
}

type Said = Ledger['said']
type Where = (list: string, id: string) => readonly PropertyKey[]
/** Lengths are compared with this slack [m]: a drawing's own rounding. */
const SLACK = 1e-6

/** References, doubles, and parts that do not fit their wall. */
export function checkJob(parts: JobParts, where: Where, ledger: Ledger): void {
  checkDoubles(parts, where, ledger)
  const walls = new Map(parts.walls.map(wall => [wall.id, { wall, length: pathLength(wall.centreline) }]))
  const wallOf = (list: string, id: string, name: string) => {
    const found = walls.get(name)
    if (found) return found
    const near = closestName(name, [...walls.keys()])
    const hint = near
      ? `did you mean “${near}”?`
      : `walls: ${[...walls.keys()].slice(0, 20).join(', ') || 'none'}`
    return ledger.wrong(
      'job/unknown-wall',
      [...where(list, id), 'wall'],
      `${id} stands in wall “${name}”, which is not there; ${hint}`,
    )
  }
  const each = <T extends { readonly id: string; readonly wall: string }>(
    list: string,
    items: readonly T[],
    check: (item: T, wall: Wall, length: number, said: Said) => string | undefined,
  ) => {
    for (const item of items) {
      const found = wallOf(list, item.id, item.wall)
      const say = found && check(item, found.wall, found.length, ledger.said)
      if (say) ledger.wrong(`job/${list}-outside`, where(list, item.id), `${item.id}: ${say}`)
    }
  }
  each('openings', parts.openings, openingSay)
  each('embeds', parts.embeds, embedSay)
  each('columns', parts.columns, (column, _, length, said) => spanSay(column.at, column.length, length, said))
  for (const wall of parts.walls)
    checkWall(wall, parts.openings, walls.get(wall.id)?.length ?? 0, where, ledger)
  checkSections(parts, walls, where, ledger)
}

function checkDoubles(parts: JobParts, where: Where, ledger: Ledger): void {
  const lists = {
    walls: parts.walls,
    openings: parts.openings,
    embeds: parts.embeds,
    columns: parts.columns,
    sections: parts.sections,
  }
  const seen = new Map<string, string>()
  for (const [list, items] of Object.entries(lists))
    for (const { id } of items) {
      const first = seen.get(id)
      if (first)
        ledger.wrong(
          'job/double-id',
          where(list, id),
          `The id “${id}” is used twice, in ${first} and in ${list}; give each its own.`,
        )
      seen.set(id, list)
    }
}

function spanSay(at: number, width: number, length: number, said: Said): string | undefined {
  const [from, to] = [at - width / 2, at + width / 2]
  if (from >= -SLACK && to <= length + SLACK) return undefined
  return `it runs from ${said(from)} to ${said(to)}, but its wall is ${said(length)} long; move it or shorten it.`
}

function openingSay(opening: Opening, wall: Wall, length: number, said: Said): string | undefined {
  if (opening.head <= opening.sill)
    return `its head at ${said(opening.head)} is not above its sill at ${said(opening.sill)}; raise the head or lower the sill.`
  if (opening.head > wall.top + SLACK)
    return `its head at ${said(opening.head)} is above the wall’s top at ${said(wall.top)}; lower the head or raise the wall.`
  const lintel = opening.lintel
  if (lintel && opening.head + lintel.height > wall.top + SLACK)
    return `the top of its lintel, ${said(opening.head + lintel.height)}, is above the wall’s top at ${said(wall.top)}; lower the head or take a lower lintel.`
  return spanSay(opening.at, opening.width, length, said)
}

function embedSay(embed: Embed, wall: Wall, length: number, said: Said): string | undefined {
  const top = embed.bottom + embed.height
  if (embed.bottom < wall.base - SLACK || top > wall.top + SLACK)
    return `it reaches from ${said(embed.bottom)} to ${said(top)}, but its wall stands from ${said(wall.base)} to ${said(wall.top)}; move it or make it lower.`
  if (embed.depth > wall.thickness + SLACK)
    return `it is ${said(embed.depth)} deep in a wall ${said(wall.thickness)} thick; make it shallower.`
  return spanSay(embed.at, embed.width, length, said)
}

function checkWall(
  wall: Wall,
  openings: readonly Opening[],
  length: number,
  where: Where,
  ledger: Ledger,
): void {
  for (const joint of wall.joints)
    if (joint > length + SLACK)
      ledger.wrong(
        'job/joint-outside',
        where('walls', wall.id),
        `${wall.id}: a joint at ${ledger.said(joint)} lies beyond the wall’s length of ${ledger.said(length)}; move it onto the wall.`,
      )
  const own = openings.filter(opening => opening.wall === wall.id).sort((a, b) => a.at - b.at)
  for (const [index, opening] of own.entries())
    for (const other of own.slice(index + 1)) {
      const beside = opening.at + opening.width / 2 <= other.at - other.width / 2 + SLACK
      const above = opening.head <= other.sill + SLACK || other.head <= opening.sill + SLACK
      if (!beside && !above)
        ledger.wrong(
          'job/openings-overlap',
          where('openings', other.id),
          `${opening.id} and ${other.id} overlap in wall ${wall.id}; move or narrow one of them.`,
        )
    }
}

function checkSections(
  parts: JobParts,
  walls: ReadonlyMap<string, { readonly length: number }>,
  where: Where,
  ledger: Ledger,
): void {
  for (const section of parts.sections)
    for (const [index, { wall, from, to }] of section.stretches.entries()) {
      const at = [...where('sections', section.id), 'stretches', index]
      const length = walls.get(wall)?.length
      if (length === undefined)
        ledger.wrong(
          'job/unknown-wall',
          at,
          `Section ${section.id} names wall “${wall}”, which is not there; walls are ${nameList([...walls.keys()])}.`,
        )
      else if (!(from < to && to <= length + SLACK))
        ledger.wrong(
          'job/stretch',
          at,
          `Section ${section.id} runs from ${ledger.said(from)} to ${ledger.said(to)} on a wall ${ledger.said(length)} long; it must go forward and end on the wall.`,
        )
    }
  const names = new Set([...walls.keys(), ...parts.openings.map(opening => opening.id)])
  for (const [index, name] of parts.noCutAt.entries())
    if (!names.has(name))
      ledger.wrong(
        'job/unknown-id',
        ['noCutAt', index],
        `“${name}” is neither a wall nor an opening of this job; those are ${nameList([...names])}.`,
      )
}
