import { createHash } from 'node:crypto'
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { initGeometry } from '@dawnlift/core/geometry'
import type { Plan } from '@dawnlift/core/plan'
import { liftWriter } from '@dawnlift/formats/rs274'
import { describe, expect, it } from 'vitest'
import { jobs, planOf } from './planned-jobs.js'
import { root } from './sources.js'

await initGeometry()
const plans = new Map<string, Plan>()
for (const job of jobs) plans.set(job, await planOf(job))

// regression: our own output, beside the outside checks above. Whole sections instead of lifts, so that it is about
// the ways of the nozzle and how they are written and not about the choice of days.
// DAWNLIFT_GOLDENS=write writes it anew.
const golden = join(root, 'golden/machine-files.json')

describe('the bytes of all sections of a job, whole, numbered and from their middle on,', () => {
  const hashOf = ({ job, routes, bands }: Plan): string => {
    const hash = createHash('sha256')
    const write = liftWriter()
    const options = { speed: job.print.speed, origin: job.machineOrigin, units: job.units }
    for (const [i, { section, layers }] of bands.entries()) {
      const lift = { job: job.name, lift: `${section}1`, machine: job.machine, options, routes: routes[i]! }
      const whole = { ...lift, fromLayer: 1, toLayer: layers }
      const rest = { ...whole, fromLayer: Math.ceil(layers / 2) }
      for (const file of [whole, { ...rest, lineNumbers: true }, { ...rest, runOut: false }])
        hash.update(write(file))
    }
    return hash.digest('hex')
  }
  const found = Object.fromEntries(jobs.map(job => [job, hashOf(plans.get(job)!)]))
  if (process.env.DAWNLIFT_GOLDENS === 'write')
    writeFileSync(golden, `${JSON.stringify(found, undefined, 2)}\n`)
  it.each(jobs)('are what they were, of %s', job =>
    expect(found[job]).toBe(JSON.parse(readFileSync(golden, 'utf8'))[job]),
  )
})
