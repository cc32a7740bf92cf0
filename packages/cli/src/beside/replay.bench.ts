import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { initGeometry } from '@dawnlift/core/geometry'
import { planJob } from '@dawnlift/core/plan'
import { assert } from '@dawnlift/core/result'
import { doubtOf, openJob } from '@dawnlift/formats/job-folder'
import { replayParcels, replayWork } from './replay-work.js'
import type { workBeside } from './work-beside.js'

const rates = { breakdownsPerHour: 1 / 60, repairHours: 3, lateChance: 0.05, lateHours: 1 }

/** Replays of the house on the dry plain: in this thread, and in workers of the built program, as `dawnlift risk` runs them. */
export async function bench() {
  await initGeometry()
  const folder = fileURLToPath(new URL('../../../../examples/torrenubia/', import.meta.url))
  const file = join(folder, 'job.yaml')
  const read = (name: string) =>
    existsSync(join(folder, name)) ? readFileSync(join(folder, name)) : undefined
  const opened = openJob({ document: readFileSync(file, 'utf8'), read })
  assert(opened.ok, 'the example opens')
  const plan = await planJob(opened.value)
  assert(plan, 'the example is planned')
  const standing = { opened: opened.value, plan, read }
  const built = fileURLToPath(new URL('../../dist/beside/work-beside.js', import.meta.url))
  const { workBeside: beside } = (await import(/* @vite-ignore */ built)) as { workBeside: typeof workBeside }
  const screen = {
    out: () => {},
    err: () => {},
    live: false,
    folder,
    stopped: () => new Promise<void>(() => {}),
  }
  const thousand = { replays: 1000, rates }
  return [
    {
      name: '100 replays, one thread',
      run: () => void doubtOf(standing, { replays: 100, rates }, () => {}),
    },
    {
      name: '1,000 replays in two workers',
      run: () =>
        beside(screen, replayWork, replayParcels({ ...standing, file }, thousand, 1000, 2), () => {}),
      once: true,
    },
  ]
}
