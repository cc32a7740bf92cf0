import type { Column, Embed, Opening, Wall } from '@dawnlift/core/job'
import type { Draft } from './draft.js'

/** What can be chosen on the plan. A lintel goes by the name of its opening. */
export interface Thing {
  readonly kind: 'wall' | 'opening' | 'lintel' | 'embed' | 'column'
  readonly id: string
}

export const thingKinds = ['wall', 'opening', 'lintel', 'embed', 'column'] as const

export type Found =
  | { readonly kind: 'wall'; readonly part: Wall; readonly wall: Wall }
  | { readonly kind: 'opening'; readonly part: Opening; readonly wall: Wall }
  | { readonly kind: 'lintel'; readonly part: Opening; readonly wall: Wall }
  | { readonly kind: 'embed'; readonly part: Embed; readonly wall: Wall }
  | { readonly kind: 'column'; readonly part: Column; readonly wall: Wall }

export const sameThing = (a: Thing | undefined, b: Thing | undefined): boolean =>
  a?.kind === b?.kind && a?.id === b?.id

export function findThing(draft: Draft, thing: Thing | undefined): Found | undefined {
  if (!thing) return undefined
  const { kind, id } = thing
  const named = <T extends { readonly id: string }>(parts: readonly T[]) => parts.find(each => each.id === id)
  const part =
    kind === 'wall'
      ? named(draft.walls)
      : kind === 'embed'
        ? named(draft.embeds)
        : kind === 'column'
          ? named(draft.columns)
          : named(draft.openings)
  const wall = part && ('wall' in part ? draft.walls.find(each => each.id === part.wall) : part)
  if (!part || !wall || (kind === 'lintel' && !(part as Opening).lintel)) return undefined
  return { kind, part, wall } as Found
}

/** How wide a thing is along its wall; a lintel with its bearings. */
export function widthOf(found: Found): number {
  switch (found.kind) {
    case 'wall':
      return 0
    case 'lintel':
      return found.part.width + 2 * (found.part.lintel?.bearing ?? 0)
    case 'column':
      return found.part.length
    case 'opening':
    case 'embed':
      return found.part.width
  }
}

/** All things in the order one walks along them: each wall, then what stands in it from its start on. */
export function inOrder(draft: Draft): readonly Thing[] {
  return draft.walls.flatMap(wall => {
    const on = <T extends { readonly wall: string }>(parts: readonly T[]) =>
      parts.filter(each => each.wall === wall.id)
    const inside = [
      ...on(draft.openings).flatMap(({ id, at, lintel }) => [
        { kind: 'opening' as const, id, at },
        ...(lintel ? [{ kind: 'lintel' as const, id, at }] : []),
      ]),
      ...on(draft.embeds).map(({ id, at }) => ({ kind: 'embed' as const, id, at })),
      ...on(draft.columns).map(({ id, at }) => ({ kind: 'column' as const, id, at })),
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
