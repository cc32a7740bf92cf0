import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, it } from 'vitest'
import { writeLift } from './index.js'
import { inventedLift } from './invented-lift.js'

const root = fileURLToPath(new URL('../../../../', import.meta.url))
const golden = join(root, 'golden/lift-over-a-change-of-plan.ngc')

/** Layers 12 and 13 of the invented lift: the plan changes between them, with a hold and a call. */
const lift = inventedLift({
  fromLayer: 12,
  toLayer: 13,
  holds: [{ afterLayer: 12, duration: 600, reason: 'inspection', ref: 'I1' }],
  calls: [{ id: 'E1', trade: 'electrical', what: 'box', wall: 'W1', layerIn: 13, layerOut: 15 }],
})

it('the machine file of two layers is the one a person has looked at', () => {
  const text = writeLift(lift)
  const known = existsSync(golden) ? readFileSync(golden, 'utf8') : ''
  if (text !== known) {
    // beside the outputs git ignores, for the eye: look at it, then put it in place of the golden
    mkdirSync(join(root, 'out'), { recursive: true })
    writeFileSync(join(root, 'out/lift-over-a-change-of-plan-changed.ngc'), text)
  }
  expect(text).toBe(known)
})
