import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { type Plan, planJob } from '@dawnlift/core/plan'
import { openJob } from '@dawnlift/formats/job-folder'
import { root } from './sources.js'

/** Whole jobs whose machine files are looked at. */
export const jobs = ['fixtures/jobs/garden-wall', 'examples/tern-cottage', 'examples/torrenubia']

/** The plan of a job's folder. */
export async function planOf(job: string): Promise<Plan> {
  const at = (name: string) => join(root, job, name)
  const read = (name: string) => (existsSync(at(name)) ? readFileSync(at(name)) : undefined)
  const opened = openJob({ document: readFileSync(at('job.yaml'), 'utf8'), read })
  if (!opened.ok) throw new Error(opened.problems[0]?.say)
  const plan = await planJob(opened.value)
  if (!plan) throw new Error('nobody cancelled')
  return plan
}
