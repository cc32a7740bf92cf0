import type { Bounds, Point } from '@dawnlift/core/geometry'
import { type RefObject, useCallback, useEffect, useRef, useState } from 'react'
import { fitView, panned, pinched, type View, type WindowSize, zoomed } from './view.js'

export interface Window {
  readonly view: View
  readonly size: WindowSize
  readonly zoom: (factor: number, at?: Point) => void
  readonly pan: (right: number, down: number) => void
  readonly pinch: (before: readonly [Point, Point], after: readonly [Point, Point]) => void
  readonly fit: () => void
  /** Brings a place of the building into the middle, if it is out of sight. */
  readonly show: (point: Point) => void
}

/** Pan and zoom over a box in the building; fits it until somebody moves the sheet. */
export function useView(host: RefObject<Element | null>, bounds: Bounds): Window {
  const [size, setSize] = useState<WindowSize>({ width: 800, height: 480 })
  const [own, setOwn] = useState<View>()
  const view = own ?? fitView(bounds, size)
  const latest = useRef({ view, size })
  latest.current = { view, size }
  const change = useCallback((make: (view: View, size: WindowSize) => View) => {
    setOwn(make(latest.current.view, latest.current.size))
  }, [])
  useEffect(() => {
    const element = host.current
    if (!element) return
    const watcher = new ResizeObserver(() =>
      setSize({ width: Math.max(50, element.clientWidth), height: Math.max(50, element.clientHeight) }),
    )
    watcher.observe(element)
    return () => watcher.disconnect()
  }, [host])
  useEffect(() => {
    const element = host.current
    if (!element) return
    // The page scrolls under a wheel that only passes by: the plan takes it when it is in use, or with Ctrl as a pinch gives it.
    const wheel = (event: Event) => {
      if (!(event instanceof WheelEvent)) return
      if (!event.ctrlKey && !element.contains(document.activeElement)) return
      event.preventDefault()
      const box = element.getBoundingClientRect()
      const at: Point = [event.clientX - box.left, event.clientY - box.top]
      change((now, window) => zoomed(now, window, Math.exp(-event.deltaY * 0.002), at))
    }
    element.addEventListener('wheel', wheel, { passive: false })
    return () => element.removeEventListener('wheel', wheel)
  }, [host, change])
  return {
    view,
    size,
    zoom: (factor, at) => change((now, window) => zoomed(now, window, factor, at)),
    pan: (right, down) => change(now => panned(now, right, down)),
    pinch: (before, after) => change((now, window) => pinched(now, window, before, after)),
    fit: () => setOwn(undefined),
    show: point =>
      change((now, window) => {
        const away = [Math.abs(point[0] - now.middle[0]), Math.abs(point[1] - now.middle[1])] as const
        const inSight =
          away[0] * now.scale < window.width / 2 - 30 && away[1] * now.scale < window.height / 2 - 30
        return inSight ? now : { ...now, middle: point }
      }),
  }
}
