import type { Plan } from '@dawnlift/core/plan'
import { failure, type Result, success } from '@dawnlift/core/result'
import { layerRouteOf } from '@dawnlift/core/route'
import { writeRestart } from '../rs274/index.js'
import { liftFile } from './outputs-of.js'

/** Where a lift goes on after a stop; passes count from 1. */
export interface Restart {
  readonly lift: string
  readonly layer: number
  readonly pass: number
}

/** The machine file of what is left of a lift. Problems: `at` names which of the three the plan does not have. */
export function restOfLift(plan: Plan, { lift: name, layer, pass }: Restart): Result<string> {
  const lifts = plan.campaign.days.flatMap(day => day.lifts)
  const lift = lifts.find(({ id }) => id.toLowerCase() === name.toLowerCase())
  if (!lift)
    return refused('lift', `There is no lift ${name}; lifts are ${lifts.map(({ id }) => id).join(', ')}.`)
  if (!isOneOf(layer, lift.firstLayer, lift.lastLayer))
    return refused(
      'layer',
      `Lift ${lift.id} has layers ${lift.firstLayer} to ${lift.lastLayer}; “${layer}” is not one of them.`,
    )
  const file = liftFile(plan, lift)
  const passes = layerRouteOf(file.routes, layer).passes.length
  if (!isOneOf(pass, 1, passes))
    return refused(
      'pass',
      `Layer ${layer} of lift ${lift.id} has passes 1 to ${passes}; “${pass}” is not one of them.`,
    )
  return success(writeRestart(file, { layer, pass: pass - 1 }))
}

const isOneOf = (value: number, least: number, most: number): boolean =>
  Number.isInteger(value) && value >= least && value <= most

const refused = (at: string, say: string): Result<never> => failure([{ code: `restart/no-${at}`, at, say }])
