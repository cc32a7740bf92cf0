import { initGeometry } from '@dawnlift/core/geometry'
import { type JobLeverRow, type Way, waysOf } from '@dawnlift/core/lever'
import { type Plan, wholeSection } from '@dawnlift/core/plan'
import type { Result } from '@dawnlift/core/result'
import type { SectionAnswer } from '@dawnlift/core/stand'
import {
  type Doubt,
  type DoubtedLevers,
  type DoubtWishes,
  doubtOf,
  leversOf,
  openJob,
  type StandingPlan,
} from '@dawnlift/formats/job-folder'
import clipperUrl from 'clipper2-wasm/dist/es/clipper2z.wasm?url'
import { expose } from 'comlink'
import type { JobFiles } from './job-files.js'
import { type LiftMove, movedLift } from './moved-lift.js'

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
  async levers(
    files: JobFiles,
    progress: Progress,
    hear: (row: JobLeverRow) => void,
  ): Promise<DoubtedLevers | undefined> {
    await ready()
    const told = (stage: string, share: number) => {
      progress(stage, share)
      return true
    }
    const standing = standingPlan(files)
    return standing && leversOf(standing, noDoubt, { progress: told, hear })
  },
  async tradeOffs(progress: Progress): Promise<readonly Way[] | undefined> {
    await ready()
    return plan && waysOf(plan, progress)
  },
  async move(lift: string, date: string): Promise<LiftMove | undefined> {
    await ready()
    return plan && movedLift(plan, lift, date)
  },
  /** The whole section of a lift as shells, at the lift's end. */
  async stand(lift: string, progress: Progress): Promise<Result<SectionAnswer> | undefined> {
    await ready()
    const found = plan?.campaign.days.flatMap(day => day.lifts).find(({ id }) => id === lift)
    const told = (share: number) => {
      progress('shells', share)
      return true
    }
    return plan && found && wholeSection(plan, found, told)
  },
  async doubt(files: JobFiles, wishes: DoubtWishes, progress: Progress): Promise<Doubt | undefined> {
    await ready()
    const standing = standingPlan(files)
    return standing && doubtOf(standing, wishes, progress)
  },
}

/** How sure a finish is has a table of its own. */
const noDoubt: DoubtWishes = {
  replays: 0,
  rates: { breakdownsPerHour: 0, repairHours: 0, lateChance: 0, lateHours: 0 },
}

/** The plan with the job it was made from. */
function standingPlan(files: JobFiles): StandingPlan | undefined {
  const read = (name: string) => files.beside[name]
  const opened = openJob({ document: files.document, read })
  return plan && opened.ok ? { opened: opened.value, plan, read } : undefined
}

export type Replanner = typeof replanner
expose(replanner)
