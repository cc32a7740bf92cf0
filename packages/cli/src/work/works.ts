import { initGeometry } from '@dawnlift/core/geometry'
import { assert } from '@dawnlift/core/result'
import { leversWork } from './levers-work.js'
import { replayWork } from './replay-work.js'

/** Work that takes long: done beside the terminal, so that it shows how far it is and can be stopped. */
export interface Work<Parcel, Done> {
  readonly name: string
  /** Pure but for reading the job's folder. `progress` answers `false` when nobody waits any more. */
  readonly run: (parcel: Parcel, progress: (stage: string, share: number) => boolean) => Promise<Done>
}

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
