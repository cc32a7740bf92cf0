import type { StandingPlan } from '@dawnlift/formats/job-folder'

/** What of a plan work beside the terminal needs: the rest is not copied there. */
export const standingParts = ({
  job,
  sections,
  bands,
  routes,
  campaign,
  soFar,
}: StandingPlan['plan']): StandingPlan['plan'] => ({
  job,
  sections,
  bands,
  routes,
  campaign,
  ...(soFar ? { soFar } : {}),
})
