import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { machineProfile } from '@dawnlift/core/machine'
import { routeSection } from '@dawnlift/core/route'
import { inspectRun } from './inspect.js'
import { inventedBands, inventedLift } from './invented-lift.js'
import { readMachineFile } from './read-machine-file.js'
import { writeLift } from './write-lift.js'

/** The invented section made tall, so that the file has some megabytes. */
function tallLift() {
  const layers = 1000
  const bands = { ...inventedBands, layers, bands: [{ ...inventedBands.bands[0]!, toLayer: layers }] }
  const base = inventedLift()
  const { routes } = routeSection(bands, base.machine, base.options)
  return inventedLift({ routes, fromLayer: 1, toLayer: layers, holds: [] })
}

export function bench(): { readonly name: string; readonly run: () => void }[] {
  const lift = tallLift()
  const text = writeLift(lift)
  const run = readMachineFile(text)
  const folder = mkdtempSync(join(tmpdir(), 'dawnlift-bench-'))
  process.on('exit', () => rmSync(folder, { recursive: true, force: true }))
  const file = join(folder, 'lift.ngc')
  const size = `${(text.length / 1e6).toFixed(1)} MB`
  const machine = machineProfile('gantry-12')!
  return [
    { name: `the same ${size} from memory to disk`, run: () => writeFileSync(file, text) },
    {
      name: `machine file of 1,000 layers, ${size}, to disk`,
      run: () => writeFileSync(file, writeLift(lift)),
    },
    {
      name: `the same with line numbers`,
      run: () => writeFileSync(file, writeLift({ ...lift, lineNumbers: true })),
    },
    { name: `read ${size} back`, run: () => void readMachineFile(text) },
    { name: `sum it up with planned times`, run: () => void (run.ok && inspectRun(run.value, { machine })) },
  ]
}
