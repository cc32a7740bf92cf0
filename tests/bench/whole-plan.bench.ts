import { newPlanCache, type Plan, type PlanInput, planJob } from '@dawnlift/core/plan'
import { demoJob, houses, withOneEmbedMoved } from './demo-job.js'

const whole = 'torrenubia from nothing'
const held = 'one embed moved a hand, the days held'

/** What an edit may cost at most, as a share of the whole plan. */
const aim = 0.1

/** The whole pipeline on the demo house: from nothing, after an edit, and ten houses at once. */
export async function bench() {
  const { job, hours } = await demoJob('torrenubia')
  const cache = newPlanCache()
  const first = (await planJob({ job, hours }, { cache }))!
  const ten = houses(job, 10)
  const holding = editsOf({ job, hours }, first)
  const searching = editsOf({ job, hours }, first)
  return [
    {
      name: whole,
      run: async () => void (await planJob({ job, hours })),
    },
    {
      name: 'the same with its geometry known',
      run: async () => void (await planJob({ job, hours }, { cache })),
    },
    { name: held, run: async () => void (await holding(true)) },
    { name: 'one embed moved a hand, the days searched', run: async () => void (await searching(false)) },
    {
      name: 'ten such houses on one slab, from nothing',
      once: true,
      run: async () => void (await planJob({ job: ten, hours })),
    },
  ]
}

/** Another embed each time: one that was moved before is known by now. */
function editsOf({ job, hours }: PlanInput, first: Plan): (hold: boolean) => Promise<Plan | undefined> {
  const cache = newPlanCache()
  const ready = planJob({ job, hours }, { cache })
  let moved = 0
  return async hold => {
    await ready
    const id = job.embeds[moved++ % job.embeds.length]!.id
    const edited = { job: withOneEmbedMoved(job, id), hours }
    return planJob(edited, { cache, ...(hold ? { hold: first.campaign } : {}) })
  }
}

export function report(rows: readonly { readonly name: string; readonly cpu: number }[]): readonly string[] {
  const cpuOf = (name: string) => rows.find(row => row.name === name)?.cpu ?? Number.NaN
  const share = cpuOf(held) / cpuOf(whole)
  return [
    `an edit is answered in ${share.toFixed(3)} of the CPU of the whole plan (aim ≤ ${aim}: ${share <= aim ? 'met' : 'NOT MET'})`,
  ]
}
