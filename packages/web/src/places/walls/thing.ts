import type { Embed, Opening, Wall } from '@dawnlift/core/job'
import type { Draft } from './draft.js'

/** What can be chosen on the plan. */
export interface Thing {
  readonly kind: 'wall' | 'opening' | 'embed'
  readonly id: string
}

export type Found =
  | { readonly kind: 'wall'; readonly part: Wall; readonly wall: Wall }
  | { readonly kind: 'opening'; readonly part: Opening; readonly wall: Wall }
  | { readonly kind: 'embed'; readonly part: Embed; readonly wall: Wall }

export const sameThing = (a: Thing | undefined, b: Thing | undefined): boolean =>
  a?.kind === b?.kind && a?.id === b?.id

export function findThing(draft: Draft, thing: Thing | undefined): Found | undefined {
  if (!thing) return undefined
  const { kind, id } = thing
  const wallOf = (name: string) => draft.walls.find(each => each.id === name)
  if (kind === 'wall') {
    const part = wallOf(id)
    return part && { kind, part, wall: part }
  }
  if (kind === 'opening') {
    const part = draft.openings.find(each => each.id === id)
    const wall = part && wallOf(part.wall)
    return part && wall && { kind, part, wall }
  }
  const part = draft.embeds.find(each => each.id === id)
  const wall = part && wallOf(part.wall)
  return part && wall && { kind, part, wall }
}

/** All things in the order one walks along them: each wall, then what stands in it from its start on. */
export function inOrder(draft: Draft): readonly Thing[] {
  return draft.walls.flatMap(wall => {
    const inside = [
      ...draft.openings
        .filter(each => each.wall === wall.id)
        .map(({ id, at }) => ({ kind: 'opening' as const, id, at })),
      ...draft.embeds
        .filter(each => each.wall === wall.id)
        .map(({ id, at }) => ({ kind: 'embed' as const, id, at })),
    ].sort((a, b) => a.at - b.at)
    return [{ kind: 'wall' as const, id: wall.id }, ...inside.map(({ kind, id }) => ({ kind, id }))]
  })
}

/** Where a key leads from here: one thing on, or one wall on; round at the ends. */
export function stepTo(
  things: readonly Thing[],
  from: Thing | undefined,
  step: 'next' | 'previous' | 'nextWall' | 'previousWall' | 'first' | 'last',
): Thing | undefined {
  if (step === 'first' || (!from && step !== 'last')) return things[0]
  if (step === 'last') return things.at(-1)
  const here = things.findIndex(each => sameThing(each, from))
  const onward = step === 'next' || step === 'nextWall' ? 1 : -1
  const wide = step === 'nextWall' || step === 'previousWall'
  for (let count = 1; count <= things.length; count++) {
    const found = things[(here + onward * count + things.length * 2) % things.length]
    if (found && (!wide || found.kind === 'wall')) return found
  }
  return undefined
}
