import { pathLength } from '@dawnlift/core/geometry'
import { formatQuantity } from '@dawnlift/core/quantity'
import { words } from '../../words/index.js'
import type { Draft } from './draft.js'
import type { Units } from './edits/length-text.js'
import { findThing, type Thing } from './thing.js'

/** `window F3`: what people call it. */
export function nameOf(draft: Draft, thing: Thing): string {
  const found = findThing(draft, thing)
  if (!found) return thing.id
  if (found.kind === 'lintel') return words.walls.lintelOf(thing.id)
  const kind = found.kind === 'wall' || found.kind === 'column' ? found.kind : found.part.kind
  return `${words.walls.kinds[kind]} ${thing.id}`
}

/** One sentence with its figures, for people who hear the plan. */
export function sayThing(draft: Draft, thing: Thing, units: Units): string {
  const found = findThing(draft, thing)
  const length = (value: number) => formatQuantity(value, 'length', units)
  if (!found) return thing.id
  const { walls } = words
  if (found.kind === 'wall') {
    const { name, id, centreline, thickness, makeUp } = found.part
    return `wall ${id}${name === id ? '' : `, ${name}`}: ${length(pathLength(centreline))} long, ${length(thickness)}, ${walls.makeUps[makeUp.kind]}`
  }
  if (found.kind === 'opening') {
    const { at, width, sill, head } = found.part
    return `${nameOf(draft, thing)} in wall ${found.wall.id}: at ${length(at)}, ${length(width)} wide, from ${length(sill)} to ${length(head)}`
  }
  if (found.kind === 'lintel') {
    const { lintel, head } = found.part
    return `${nameOf(draft, thing)} in wall ${found.wall.id}: on ${length(head)}, ${length(lintel?.height ?? 0)} high, bearing ${length(lintel?.bearing ?? 0)} each side`
  }
  if (found.kind === 'column') {
    const { at, length: long, thickness } = found.part
    return `${nameOf(draft, thing)} in wall ${found.wall.id}: at ${length(at)}, ${length(long)} by ${length(thickness)}`
  }
  const { at, bottom, face } = found.part
  return `${nameOf(draft, thing)} in wall ${found.wall.id}, ${walls.faces[face]}: at ${length(at)}, ${length(bottom)} up`
}
