import type { Job } from '@dawnlift/core/job'
import { sayQuantity } from '@dawnlift/core/limit'
import { campaignInput, type Plan } from '@dawnlift/core/plan'
import { failure, type Problem, type Result, success } from '@dawnlift/core/result'
import type { SiteInput } from '@dawnlift/core/site-campaign'
import { distanceBetween } from '@dawnlift/core/weather'

/** A planned job of a site, under the name the site gives it. */
export interface SiteBuilding {
  readonly name: string
  /** Where its job lies, for messages. */
  readonly at: string
  readonly plan: Pick<Plan, 'job' | 'sections' | 'bands' | 'routes' | 'campaign'>
}

/** Buildings farther apart are no one site [m]. Common practice, no source. */
const ONE_SITE = 3000

/** What the buildings of a site need to be shared out; or everything in which their jobs disagree. */
export function siteOf(buildings: readonly SiteBuilding[], move: number): Result<SiteInput> {
  const [first, ...others] = buildings
  const problems = [
    ...buildings.flatMap(unsuited),
    ...(first ? others.flatMap(other => disagreements(first, other)) : []),
  ]
  if (problems.length > 0) return failure(problems)
  return success({
    move,
    buildings: buildings.map(({ name, plan: { job, sections, bands, routes, campaign } }) => ({
      name,
      input: campaignInput(job, sections, bands, routes, campaign.hours),
    })),
  })
}

/** One machine and one crew work at all buildings: what is said of them must be the same in each job. */
function disagreements(first: SiteBuilding, other: SiteBuilding): readonly Problem[] {
  const [a, b] = [first.plan.job, other.plan.job]
  const problem = (code: string, say: string): Problem => ({ code, at: other.at, say })
  const crews = differing(a.crew, b.crew)
  const machines = differing(a.machine, b.machine)
  const apart = distanceBetween(a.site, b.site)
  const far = (metres: number) => sayQuantity(metres / 1000, 'km', b.units)
  return [
    ...(crews.length > 0
      ? [
          problem(
            'site/other-crew',
            `The crew differs from ${first.name}’s in ${crews.join(', ')}; one crew prints both: write the same crew in both jobs.`,
          ),
        ]
      : []),
    ...(machines.length > 0
      ? [
          problem(
            'site/other-machine',
            `The machine differs from ${first.name}’s in ${machines.join(', ')}; one machine prints both: write the same machine in both jobs (its origin may differ).`,
          ),
        ]
      : []),
    ...(a.site.timeZone === b.site.timeZone
      ? []
      : [
          problem(
            'site/other-zone',
            `The time zone is ${b.site.timeZone}, ${first.name}’s is ${a.site.timeZone}.`,
          ),
        ]),
    ...(apart > ONE_SITE
      ? [
          problem(
            'site/far-apart',
            `It lies ${far(apart)} from ${first.name}; up to ${far(ONE_SITE)} are one site.`,
          ),
        ]
      : []),
  ]
}

/** What a job has that is not shared out, and what it lacks. */
function unsuited({ at, plan: { job, campaign } }: SiteBuilding): readonly Problem[] {
  const problem = (code: string, say: string): Problem => ({ code, at, say })
  return [
    ...(campaign.hours.some(hour => hour.open)
      ? []
      : [problem('site/no-hours', 'No hour of its weather may be printed in.')]),
    ...(job.batching.silo
      ? [
          problem(
            'site/silo',
            'What the silo holds is not shared out; leave stock and loads out of this job.',
          ),
        ]
      : []),
    ...(job.pins?.length
      ? [
          problem(
            'site/pins',
            'Pins of one building’s plan do not hold on a shared site; leave them out of this job.',
          ),
        ]
      : []),
  ]
}

/** Names of the fields in which two records differ. */
const differing = <T extends Job['crew'] | Job['machine']>(a: T, b: T): readonly string[] =>
  (Object.keys({ ...a, ...b }) as (keyof T & string)[]).filter(
    key => JSON.stringify(a[key]) !== JSON.stringify(b[key]),
  )
