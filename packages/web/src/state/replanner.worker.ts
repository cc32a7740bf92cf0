import { initGeometry } from '@dawnlift/core/geometry'
import type { Plan } from '@dawnlift/core/plan'
import { type Doubt, type DoubtWishes, doubtOf, openJob } from '@dawnlift/formats/job-folder'
import clipperUrl from 'clipper2-wasm/dist/es/clipper2z.wasm?url'
import { expose } from 'comlink'
import type { JobFiles } from './job-files.js'
import { type LiftMove, movedLift } from './moved-lift.js'
import { type TriedLevers, triedLevers } from './tried-levers.js'

type Progress = (stage: string, share: number) => void

const ready = () => initGeometry({ locateFile: () => clipperUrl })

let plan: Plan | undefined

/** Plans a standing plan again, with levers pulled or in other weather. It may take long: who asks may end the worker. */
const replanner = {
  /** Takes the plan that stands from the planner. */
  borrow: (port: MessagePort): Promise<void> =>
    new Promise(resolve => {
      port.onmessage = ({ data }: MessageEvent<Plan | undefined>) => {
        plan = data
        port.close()
        resolve()
      }
    }),
  async levers(progress: Progress): Promise<TriedLevers | undefined> {
    await ready()
    return plan && triedLevers(plan, progress)
  },
  async move(lift: string, date: string): Promise<LiftMove | undefined> {
    await ready()
    return plan && movedLift(plan, lift, date)
  },
  async doubt(files: JobFiles, wishes: DoubtWishes, progress: Progress): Promise<Doubt | undefined> {
    await ready()
    if (!plan) return undefined
    const read = (name: string) => files.beside[name]
    const opened = openJob({ document: files.document, read })
    return opened.ok ? doubtOf({ opened: opened.value, plan, read }, wishes, progress) : undefined
  },
}

export type Replanner = typeof replanner
expose(replanner)
