import type { Hold } from '@dawnlift/core/campaign'
import type { Machine } from '@dawnlift/core/machine'
import type { LiftSpan, RouteOptions, SectionRoutes } from '@dawnlift/core/route'
import type { Call } from '@dawnlift/core/trade'

/** Everything that goes into the machine file of one lift, or of what is left of it. */
export interface LiftFile extends LiftSpan {
  readonly job: string
  readonly lift: string
  readonly routes: SectionRoutes
  readonly machine: Machine
  /** The same options the routes were made with. */
  readonly options: RouteOptions
  readonly holds?: readonly Hold[]
  readonly calls?: readonly Pick<Call, 'id' | 'trade' | 'what' | 'wall' | 'layerIn' | 'layerOut'>[]
  /** Number every line with N words; slower to write, and no controller of the standard needs them. */
  readonly lineNumbers?: boolean
  /**
   * Stop the pump its stop lag before the end of a bead and run on without (the default).
   * Set false for controllers that halt the nozzle at every M word.
   */
  readonly runOut?: boolean
}
