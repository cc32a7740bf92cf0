import type { Machine } from '../machine/index.js'
import type { MetresPerSecond } from '../quantity/index.js'
import type { LayerRoute, Pass, SectionRoutes } from './pass.js'
import { retimedPasses } from './timed-pass.js'

/**
 * Routes at another nozzle speed, in the same order and on the same ways: what corners, heading and pump make of it. Travel with the
 * nozzle off takes as long as before. A route searched for that speed may be quicker by a little, never slower.
 */
export const retimedRoutes = (
  routes: SectionRoutes,
  machine: Machine,
  speed: MetresPerSecond,
): SectionRoutes => ({ ...routes, routes: routes.routes.map(route => retimed(route, machine, speed)) })

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
