import { initGeometry } from '@dawnlift/core/geometry'
import { assert } from '@dawnlift/core/result'
import { leversWork } from './levers-work.js'
import { replayWork } from './replay-work.js'
import type { Work } from './work.js'

const works: readonly Work<never, unknown>[] = [replayWork, leversWork]

/** Does the work of that name in this thread. */
export async function doWork(
  name: string,
  parcel: unknown,
  progress: (stage: string, share: number) => boolean,
): Promise<unknown> {
  const work = works.find(each => each.name === name)
  assert(work, `there is work called ${name}`)
  await initGeometry()
  return work.run(parcel as never, progress)
}
