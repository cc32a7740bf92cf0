import type { Point } from '@dawnlift/core/geometry'
import { type PointerEvent, useRef, useState } from 'react'
import type { Draft } from '../draft.js'
import { applyEdits } from '../edits/apply-edits.js'
import { type Carry, carriedTo, carriedUp, carryEdits, pickUp } from '../plan/carry.js'
import { findThing, type Thing } from '../thing.js'

interface Grip {
  readonly from: Point
  readonly held: Carry
}

/** Small pulls the other way are not meant: this far a thing keeps its station, and this many layers its height. */
const keepAlong = 0.04
const keepLayers = 3

/** Takes openings and embeds by the drawing of a wall: along it and, unlike on the plan, up and down. */
export function useElevationHands(
  draft: Draft,
  toWall: (event: PointerEvent) => Point | undefined,
  choose: (thing: Thing) => void,
) {
  const [carry, setCarry] = useState<Carry>()
  const [wrong, setWrong] = useState<string>()
  const grip = useRef<Grip>(undefined)
  const down = (event: PointerEvent) => {
    const thing = thingUnder(draft, event)
    const from = toWall(event)
    const held = pickUp(draft, thing)
    setWrong(undefined)
    if (!thing || !from || !held) return
    // The lettering is not to be marked as text on the way.
    event.preventDefault()
    choose(thing)
    grip.current = { from, held }
    event.currentTarget.setPointerCapture(event.pointerId)
  }
  const move = (event: PointerEvent) => {
    const to = toWall(event)
    if (!grip.current || !to) return
    const { from, held } = grip.current
    setCarry(carriedBy(draft, held, [to[0] - from[0], to[1] - from[1]]))
  }
  const up = async () => {
    const held = carry
    grip.current = undefined
    if (!held) return
    const problems = await applyEdits(raw => carryEdits(raw, draft, held))
    setCarry(undefined)
    setWrong(problems.length > 0 ? problems.map(each => each.say).join(' ') : undefined)
  }
  const letGo = () => {
    grip.current = undefined
    setCarry(undefined)
  }
  return {
    carry,
    wrong,
    pointer: {
      onPointerDown: down,
      onPointerMove: move,
      onPointerUp: () => void up(),
      onPointerCancel: letGo,
    },
  }
}

/** Pulled by so much along and up. */
export function carriedBy(draft: Draft, held: Carry, [along, up]: Point): Carry {
  const { layerHeight } = draft.print
  const there = Math.abs(along) < keepAlong ? held : carriedTo(draft, held, held.at + along, keepAlong)
  return Math.abs(up) < keepLayers * layerHeight ? there : carriedUp(draft, there, held.low + up)
}

function thingUnder(draft: Draft, event: PointerEvent): Thing | undefined {
  const mark = (event.target as Element).closest(
    '[data-layer="openings"] [data-ref], [data-layer="embeds"] [data-ref]',
  )
  const id = mark?.getAttribute('data-ref')
  if (!id) return undefined
  return (['opening', 'embed', 'column'] as const)
    .map(kind => ({ kind, id }))
    .find(each => findThing(draft, each))
}
