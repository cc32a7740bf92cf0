import type { Point } from '@dawnlift/core/geometry'
import type { KeyboardEvent } from 'react'
import type { Draft } from '../draft.js'
import { inOrder, stepTo, type Thing } from '../thing.js'
import { carriedTo, carriedUp } from './carry.js'
import { emptyChain, withoutCorner } from './chain.js'
import { shiftedTo } from './shift.js'
import { alongStep } from './snap-along.js'
import type { Hands } from './use-hands.js'
import type { Window } from './use-view.js'

export interface KeyContext {
  readonly draft: Draft
  readonly chosen: Thing | undefined
  readonly choose: (thing: Thing | undefined) => void
  readonly hands: Hands
  readonly window: Window
  readonly remove: () => void
  readonly finish: () => void
}

const arrows: Readonly<Record<string, Point>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
}

/** All that the pointer can do, by keys. A key that meant something goes no further. */
export function planKey(event: KeyboardEvent, context: KeyContext): void {
  if (event.ctrlKey || event.metaKey || event.altKey) return
  const { hands, window } = context
  const arrow = arrows[event.key]
  hands.setWrong(undefined)
  const meant =
    zoomKey(event.key, window) ||
    (hands.inHand
      ? carryKey(event, arrow, context)
      : hands.tool === 'choose'
        ? chooseKey(event, arrow, context)
        : drawKey(event, arrow, context))
  if (meant) event.preventDefault()
}

function zoomKey(key: string, window: Window): boolean {
  if (key === '+' || key === '=') window.zoom(1.25)
  else if (key === '-') window.zoom(0.8)
  else if (key === '0') window.fit()
  else return false
  return true
}

const steps = {
  ArrowRight: 'next',
  ArrowLeft: 'previous',
  ArrowDown: 'nextWall',
  ArrowUp: 'previousWall',
  Home: 'first',
  End: 'last',
} as const

function chooseKey(event: KeyboardEvent, arrow: Point | undefined, context: KeyContext): boolean {
  const { draft, chosen, choose, hands, window, remove } = context
  if (arrow && event.shiftKey) {
    window.pan(-arrow[0] * 60, arrow[1] * 60)
    return true
  }
  const step = steps[event.key as keyof typeof steps]
  if (step) choose(stepTo(inOrder(draft), chosen, step))
  else if (event.key === 'm' || event.key === 'M') hands.takeUp()
  else if (event.key === 'Delete' || event.key === 'Backspace') remove()
  else if (event.key === 'Escape') choose(undefined)
  else return false
  return true
}

/** Along the wall by a step, ten with Shift; up and down by a layer. A whole wall goes by steps every way. */
function carryKey(event: KeyboardEvent, arrow: Point | undefined, { draft, hands }: KeyContext): boolean {
  const { carry, shift } = hands
  const far = event.shiftKey ? 10 : 1
  const step = alongStep(draft.units)
  if (arrow && shift) {
    const by: Point = [shift.by[0] + arrow[0] * far * step, shift.by[1] + arrow[1] * far * step]
    hands.setShift(shiftedTo(draft, shift, by, { reach: step / 4, step }))
  } else if (arrow && carry) {
    const along = carriedTo(draft, carry, carry.at + arrow[0] * far * step, 0)
    hands.setCarry(
      arrow[1] === 0 ? along : carriedUp(draft, carry, carry.low + arrow[1] * far * draft.print.layerHeight),
    )
  } else if (event.key === 'Enter' || event.key === 'm' || event.key === 'M') void hands.setDown()
  else if (event.key === 'Escape') hands.putBack()
  else return false
  return true
}

/** The cross goes by a tenth of a metre or four inches, by one step with Shift. */
function drawKey(event: KeyboardEvent, arrow: Point | undefined, context: KeyContext): boolean {
  const { draft, hands, window, finish } = context
  const here = hands.cursor?.point ?? hands.chain.points.at(-1) ?? window.view.middle
  const { points } = hands.chain
  if (arrow) {
    const by = alongStep(draft.units) * (event.shiftKey ? 1 : draft.units === 'metric' ? 10 : 8)
    const on = (value: number) => Number((Math.round(value / by) * by).toFixed(9))
    hands.setCursor({ point: [on(here[0] + arrow[0] * by), on(here[1] + arrow[1] * by)] })
  } else if (event.key === 'Enter') {
    const last = points.at(-1)
    if (hands.tool === 'wall' && last && last[0] === here[0] && last[1] === here[1]) finish()
    else hands.addCorner(here)
  } else if (event.key === 'Backspace') hands.setChain(withoutCorner)
  else if (event.key === 'a' || event.key === 'A') hands.setArc(now => !now)
  else if (event.key === 'Escape') {
    if (points.length > 0) hands.setChain(emptyChain)
    else hands.setTool('choose')
  } else return false
  return true
}
