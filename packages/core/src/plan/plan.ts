import type { Campaign, CampaignChange } from '../campaign/index.js'
import type { CurePlan } from '../cure/index.js'
import type { Job } from '../job/index.js'
import type { LostTime, Stands } from '../log/index.js'
import type { ColumnPour } from '../pour/index.js'
import type { Finding } from '../result/index.js'
import type { SectionRoutes } from '../route/index.js'
import type { Section } from '../section/index.js'
import type { Tally } from '../tally/index.js'
import type { Call } from '../trade/index.js'
import type { SectionBands, Snap } from '../wall/index.js'

/** Everything the pipeline computes from a job and its weather. Plain data: survives `structuredClone` and JSON. */
export interface Plan {
  readonly job: Job
  readonly sections: readonly Section[]
  readonly bands: readonly SectionBands[]
  readonly routes: readonly SectionRoutes[]
  readonly campaign: Campaign
  readonly calls: readonly Call[]
  /** How each lift is kept until it is strong; its temperatures over time are left out, they are asked for lift by lift. */
  readonly cure: readonly LiftCure[]
  readonly pours: readonly ColumnPour[]
  readonly tally: Tally
  readonly snaps: readonly Snap[]
  readonly findings: readonly Finding[]
  /** What the site log says stands, and who must be told what of the days to come. */
  readonly soFar?: SoFar
  /**
   * Set where the days are those of the plan before, printed on the job as it is now: every rule is kept, better days have
   * not been looked for.
   */
  readonly held?: true
}

export interface SoFar extends Stands {
  readonly changes: readonly CampaignChange[]
  /** Whether the days told before were kept as far as they go. */
  readonly kept: boolean
  readonly lost: readonly LostTime[]
}

export type LiftCure = Omit<CurePlan, 'heat'>
