import { nearestOnPath, type Point } from '@dawnlift/core/geometry'
import { type PointerEvent, useRef, useState } from 'react'
import type { Draft } from '../draft.js'
import { applyEdits } from '../edits/apply-edits.js'
import { type MovedWall, movedWallEdits, moveEnd } from '../edits/move-end.js'
import { findThing, type Thing } from '../thing.js'
import { type Carry, carriedTo, carryEdits, pickUp, withCarry } from './carry.js'
import { type Chain, emptyChain, lastDirection, withCorner } from './chain.js'
import { endAt, thingAt } from './hit.js'
import { movedBy, type Shift, shiftEdits, shiftedTo, takeWall, withMoved } from './shift.js'
import { alongStep } from './snap-along.js'
import { type SnappedPoint, snapPoint } from './snap-point.js'
import type { Window } from './use-view.js'
import { toBuilding } from './view.js'

export type Tool = 'choose' | 'wall' | 'measure'

interface EndInHand {
  readonly wall: string
  readonly end: 'start' | 'end'
  readonly moved: readonly MovedWall[]
  readonly to?: string
}

type Gesture =
  | { readonly kind: 'carry'; readonly begin: Point; readonly offset: number }
  | { readonly kind: 'end'; readonly wall: string; readonly end: 'start' | 'end'; readonly begin: Point }
  | { readonly kind: 'shift'; readonly begin: Point; readonly from: Point }
  | { readonly kind: 'pan'; readonly begin: Point; readonly tap: boolean }

/** Pixels before a press becomes a pull, and how near a finger or a mouse must come. */
const slack = 4
const fingerReach = 22
const mouseReach = 8
const snapPixels = 9

/** Everything the pointer does on the plan. What is in the hand shows in `shown` and is written when it is set down. */
export function useHands(
  draft: Draft,
  window: Window,
  chosen: Thing | undefined,
  choose: (thing: Thing | undefined) => void,
) {
  const [tool, setToolOnly] = useState<Tool>('choose')
  const [carry, setCarry] = useState<Carry>()
  const [shift, setShift] = useState<Shift>()
  const [end, setEnd] = useState<EndInHand>()
  const [chain, setChain] = useState<Chain>(emptyChain)
  const [arc, setArc] = useState(false)
  const [cursor, setCursor] = useState<SnappedPoint>()
  const [wrong, setWrong] = useState<string>()
  const gesture = useRef<Gesture>(undefined)
  const fingers = useRef(new Map<number, Point>())
  const pulling = useRef(false)
  const reach = (pixels: number) => pixels / window.view.scale

  const setTool = (next: Tool) => {
    setToolOnly(next)
    setChain(emptyChain)
    setCursor(undefined)
    setWrong(undefined)
  }
  const snapped = (asked: Point): SnappedPoint => {
    const from = chain.points.at(-1)
    const along = lastDirection(chain)
    return snapPoint(draft, asked, {
      reach: reach(snapPixels + 3),
      step: alongStep(draft.units),
      ...(from ? { from } : {}),
      ...(along ? { along } : {}),
    })
  }
  const addCorner = (point: Point) => {
    const next = withCorner(chain, point, arc && tool === 'wall')
    setChain(next)
    // The cross goes on from where the wall has come to, which after an arc is not where it was clicked.
    const last = next.points.at(-1)
    if (last && chain.arcEnd) setCursor({ point: last })
  }

  /** Into the hand what is chosen: a wall whole, what stands in one to be moved along it. */
  const takeUp = () => {
    setCarry(pickUp(draft, chosen))
    setShift(takeWall(draft, chosen))
  }
  const putBack = () => {
    setCarry(undefined)
    setShift(undefined)
  }
  const setDown = async () => {
    if (!carry && !shift) return
    const problems = await applyEdits(raw =>
      carry ? carryEdits(raw, draft, carry) : shift ? shiftEdits(raw, draft, shift) : [],
    )
    putBack()
    setWrong(problems.length > 0 ? problems.map(each => each.say).join(' ') : undefined)
  }
  const setEndDown = async (held: EndInHand) => {
    const problems = await applyEdits(raw => movedWallEdits(raw, draft, held.moved))
    setEnd(undefined)
    setWrong(problems.length > 0 ? problems.map(each => each.say).join(' ') : undefined)
  }

  const place = (event: PointerEvent): Point => {
    const box = event.currentTarget.getBoundingClientRect()
    return [event.clientX - box.left, event.clientY - box.top]
  }
  const down = (event: PointerEvent) => {
    const at = place(event)
    fingers.current.set(event.pointerId, at)
    pulling.current = false
    putBack()
    event.currentTarget.setPointerCapture(event.pointerId)
    if (fingers.current.size > 1 || tool !== 'choose') {
      gesture.current = { kind: 'pan', begin: at, tap: fingers.current.size === 1 }
      return
    }
    const point = toBuilding(window.view, window.size, at)
    const near = reach(event.pointerType === 'mouse' ? mouseReach : fingerReach)
    const grip = chosen?.kind === 'wall' ? endAt(draft, chosen.id, point, near * 1.2) : undefined
    if (grip && chosen) {
      gesture.current = { kind: 'end', wall: chosen.id, end: grip, begin: at }
      return
    }
    const thing = thingAt(draft, point, near)
    // A wall is taken by the second touch: the first one, on so large a thing, often means the sheet.
    if (thing?.kind === 'wall' && chosen?.kind === 'wall' && thing.id === chosen.id) {
      gesture.current = { kind: 'shift', begin: at, from: point }
      return
    }
    choose(thing)
    setWrong(undefined)
    const found = findThing(draft, thing)
    gesture.current =
      found && found.kind !== 'wall'
        ? {
            kind: 'carry',
            begin: at,
            offset: nearestOnPath(found.wall.centreline, point).station - found.part.at,
          }
        : { kind: 'pan', begin: at, tap: false }
  }
  const move = (event: PointerEvent) => {
    const at = place(event)
    const point = toBuilding(window.view, window.size, at)
    const before = fingers.current.get(event.pointerId)
    if (!before) {
      if (tool !== 'choose') setCursor(snapped(point))
      return
    }
    const others = [...fingers.current].filter(([id]) => id !== event.pointerId)
    fingers.current.set(event.pointerId, at)
    const other = others[0]?.[1]
    if (other) return window.pinch([before, other], [at, other])
    const now = gesture.current
    if (!now) return
    pulling.current ||= Math.hypot(at[0] - now.begin[0], at[1] - now.begin[1]) >= slack
    if (!pulling.current) return
    if (now.kind === 'pan') {
      window.pan(at[0] - before[0], at[1] - before[1])
    } else if (now.kind === 'end') {
      const { point: to, to: say } = snapPoint(draft, point, {
        reach: reach(snapPixels),
        step: alongStep(draft.units),
        except: [now.wall],
        ...endContext(draft, now.wall, now.end),
      })
      setEnd({
        wall: now.wall,
        end: now.end,
        moved: moveEnd(draft, now.wall, now.end, to),
        ...(say ? { to: say } : {}),
      })
    } else if (now.kind === 'shift') {
      const held = shift ?? takeWall(draft, chosen)
      const by = [point[0] - now.from[0], point[1] - now.from[1]] as const
      if (held)
        setShift(shiftedTo(draft, held, by, { reach: reach(snapPixels), step: alongStep(draft.units) }))
    } else {
      const held = carry ?? pickUp(draft, chosen)
      const found = findThing(draft, chosen)
      if (held && found)
        setCarry(
          carriedTo(
            draft,
            held,
            nearestOnPath(found.wall.centreline, point).station - now.offset,
            reach(snapPixels),
          ),
        )
    }
  }
  const up = (event: PointerEvent) => {
    const at = fingers.current.get(event.pointerId)
    fingers.current.delete(event.pointerId)
    const now = gesture.current
    if (fingers.current.size > 0) return
    gesture.current = undefined
    if (now?.kind === 'pan' && now.tap && !pulling.current && at)
      addCorner(snapped(toBuilding(window.view, window.size, at)).point)
    if ((now?.kind === 'carry' && carry) || (now?.kind === 'shift' && shift)) void setDown()
    if (now?.kind === 'end' && end) void setEndDown(end)
  }
  const letGo = () => {
    fingers.current.clear()
    gesture.current = undefined
    putBack()
    setEnd(undefined)
  }
  return {
    tool,
    setTool,
    carry,
    setCarry,
    shift,
    setShift,
    inHand: carry !== undefined || shift !== undefined,
    takeUp,
    putBack,
    setDown,
    chain,
    setChain,
    addCorner,
    arc,
    setArc,
    cursor,
    setCursor,
    snapped,
    wrong,
    setWrong,
    lineUp: carry?.to ?? shift?.to ?? end?.to ?? cursor?.to,
    /** The plan with what is in the hand where the hand has it. */
    shown: withMoved(withCarry(draft, carry), end?.moved ?? (shift ? movedBy(draft, shift) : [])),
    pointer: { onPointerDown: down, onPointerMove: move, onPointerUp: up, onPointerCancel: letGo },
  }
}

export type Hands = ReturnType<typeof useHands>

/** The corner before the end, to run square from. */
function endContext(
  draft: Draft,
  id: string,
  end: 'start' | 'end',
): { readonly from?: Point; readonly along?: Point } {
  const path = draft.walls.find(each => each.id === id)?.centreline
  const from = path && (end === 'start' ? path.points[1] : path.points.at(-2))
  return from ? { from } : {}
}
