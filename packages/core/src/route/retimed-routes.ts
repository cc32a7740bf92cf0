import type { Machine } from '../machine/index.js'
import type { MetresPerSecond } from '../quantity/index.js'
import type { LayerRoute, Pass, SectionRoutes } from './pass.js'
import { retimedPasses } from './timed-pass.js'

/**
 * Routes at another nozzle speed, in the same order and on the same ways: what corners, heading and pump make of it. Travel with the
 * nozzle off takes as long as before. A route searched for that speed may be quicker by a little, never slower.
 */
export function retimedRoutes(
  routes: SectionRoutes,
  machine: Machine,
  speed: MetresPerSecond,
): SectionRoutes {
  const rules = JSON.stringify(machine)
  return { ...routes, routes: routes.routes.map(route => keptRetimed(route, machine, rules, speed)) }
}

const retimedBefore = new WeakMap<
  LayerRoute,
  { readonly rules: string; readonly bySpeed: Map<MetresPerSecond, LayerRoute> }
>()

/** A route that stays the same object is timed once at a speed. */
function keptRetimed(route: LayerRoute, machine: Machine, rules: string, speed: MetresPerSecond): LayerRoute {
  const known = retimedBefore.get(route)
  const bySpeed = known?.rules === rules ? known.bySpeed : new Map<MetresPerSecond, LayerRoute>()
  if (bySpeed !== known?.bySpeed) retimedBefore.set(route, { rules, bySpeed })
  const timed = bySpeed.get(speed) ?? retimed(route, machine, speed)
  bySpeed.set(speed, timed)
  return timed
}

function retimed(route: LayerRoute, machine: Machine, speed: MetresPerSecond): LayerRoute {
  const passes = chainsOf(route).flatMap(chain => retimedPasses(chain, speed, machine))
  return { ...route, passes, printTime: passes.reduce((sum, pass) => sum + pass.time, 0) }
}

/** Passes that follow one another without a stop. */
function chainsOf({ passes, travels }: LayerRoute): readonly (readonly Pass[])[] {
  const chains: Pass[][] = []
  for (const [i, pass] of passes.entries()) {
    const last = chains.at(-1)
    if (last && travels[i]?.joined) last.push(pass)
    else chains.push([pass])
  }
  return chains
}
