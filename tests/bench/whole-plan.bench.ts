import { newPlanCache, planJob } from '@dawnlift/core/plan'
import { demoJob, houses, withOneEmbedMoved } from './demo-job.js'

/** The whole pipeline on the demo house: cold, after an edit, and ten houses at once. */
export async function bench() {
  const { job, hours } = await demoJob('torrenubia')
  const cache = newPlanCache()
  await planJob({ job, hours }, { cache })
  const ten = houses(job, 10)
  let moved = 0
  return [
    {
      name: 'torrenubia from nothing',
      run: async () => void (await planJob({ job, hours })),
    },
    {
      name: 'the same with its geometry known',
      run: async () => void (await planJob({ job, hours }, { cache })),
    },
    {
      name: 'one embed moved a hand, the rest known',
      // Another embed each time: one that was moved before is known by now.
      run: async () => {
        const id = job.embeds[moved++ % job.embeds.length]!.id
        await planJob({ job: withOneEmbedMoved(job, id), hours }, { cache })
      },
    },
    {
      name: 'ten such houses on one slab, from nothing',
      once: true,
      run: async () => void (await planJob({ job: ten, hours })),
    },
  ]
}
