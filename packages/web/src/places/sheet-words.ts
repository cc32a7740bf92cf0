import type { Plan } from '@dawnlift/core/plan'
import type { SheetWords } from '@dawnlift/drawing/paper'

/** What stands in the title of a drawing of this job. */
export const sheetWords = (plan: Plan): SheetWords => ({
  job: plan.job.name,
  revision: plan.job.revision,
  date: plan.job.calendar.firstDay,
})
