import type { Job } from '@dawnlift/core/job'

/** What stands on the plan as the document says it now; the full plan follows a moment later. */
export type Draft = Pick<Job, 'walls' | 'openings' | 'embeds' | 'columns' | 'print' | 'units'>
