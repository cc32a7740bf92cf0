import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { checkCampaign } from '@dawnlift/core/campaign'
import { initGeometry } from '@dawnlift/core/geometry'
import type { Embed, Job } from '@dawnlift/core/job'
import { campaignInput, newPlanCache, type Plan, type PlanInput, planJob } from '@dawnlift/core/plan'
import { openJob } from '@dawnlift/formats/job-folder'
import { describe, expect, it } from 'vitest'
import { root } from './sources.js'

await initGeometry()

function opened(example: string): PlanInput {
  const at = (name: string) => join(root, 'examples', example, name)
  const read = (name: string) => (existsSync(at(name)) ? readFileSync(at(name)) : undefined)
  const job = openJob({ document: readFileSync(at('job.yaml'), 'utf8'), read })
  if (!job.ok) throw new Error(job.problems[0]?.say)
  return job.value
}

const plain = ({ campaign, findings, calls, tally }: Plan) =>
  JSON.parse(JSON.stringify({ days: campaign.days, bound: campaign.bound, findings, calls, tally }))

const withBox = (job: Job, change: (embed: Embed) => Partial<Embed>): Job => {
  const box = job.embeds.findIndex(embed => embed.kind === 'box')
  return {
    ...job,
    embeds: job.embeds.map((embed, i) => (i === box ? { ...embed, ...change(embed) } : embed)),
  }
}

const faults = ({ job, sections, bands, routes, campaign }: Plan) =>
  checkCampaign(campaignInput(job, sections, bands, routes, campaign.hours), campaign)

const clocks = ({ campaign }: Plan) =>
  campaign.days.map(day => [day.date, ...day.lifts.map(lift => [lift.id, lift.lastLayer, lift.start])])

describe('a plan made with what earlier plans kept', () => {
  const input = opened('tern-cottage')
  const { job } = input

  it('is the plan made afresh, edit after edit, whether or not the days were held before', async () => {
    const cache = newPlanCache()
    const first = await planJob(input, { cache })
    const pins = [{ kind: 'closed', section: 'A', dates: [job.calendar.firstDay] }] as const
    const edits: readonly Job[] = [
      withBox(job, ({ at, bottom }) => ({ at: at + 0.05, bottom: bottom + 0.02 })),
      { ...job, pins, crew: { ...job.crew, changeOver: job.crew.changeOver + 600 } },
    ]
    for (const edit of edits) {
      await planJob({ ...input, job: edit }, { cache, hold: first!.campaign })
      const warm = await planJob({ ...input, job: edit }, { cache })
      const cold = await planJob({ ...input, job: edit })
      expect(plain(warm!)).toEqual(plain(cold!))
    }
    expect(plain((await planJob(input, { cache }))!)).toEqual(plain(first!))
  }, 60_000)

  it('has bands and routes that stay as the same objects, so that they need not be sent or drawn again', async () => {
    const cache = newPlanCache()
    const first = (await planJob(input, { cache }))!
    const job = withBox(input.job, ({ at }) => ({ at: at + 0.05 }))
    const next = (await planJob({ ...input, job }, { cache, hold: first.campaign }))!
    const parts = (plan: Plan) => [
      plan.bands.flatMap(each => each.bands),
      plan.routes.flatMap(each => each.routes),
    ]
    for (const [i, list] of parts(next).entries()) {
      const before = new Set<unknown>(parts(first)[i])
      const changed = list.filter(each => !before.has(each)).length
      expect(changed).toBeGreaterThan(0)
      expect(changed).toBeLessThan(list.length / 2)
    }
    expect(next.campaign.hours).toBe(first.campaign.hours)
  }, 60_000)
})

describe('a plan whose days are held', () => {
  it.each(['tern-cottage', 'torrenubia'])(
    'keeps every rule on edits of %s, and says so',
    async example => {
      const input = opened(example)
      const cache = newPlanCache()
      const first = (await planJob(input, { cache }))!
      const [wall] = input.job.walls
      const edits: readonly Job[] = [
        withBox(input.job, ({ at }) => ({ at: at + 0.05 })),
        withBox(input.job, ({ bottom }) => ({ bottom: bottom + 0.02 })),
        {
          ...input.job,
          walls: input.job.walls.map(each => (each === wall ? { ...wall, top: wall.top - 0.06 } : each)),
        },
        { ...input.job, crew: { ...input.job.crew, embedTime: input.job.crew.embedTime * 3 } },
      ]
      for (const job of edits) {
        const held = (await planJob({ ...input, job }, { cache, hold: first.campaign }))!
        expect(held.held).toBe(true)
        expect(faults(held)).toEqual([])
        expect(held.campaign.finished).toBe(true)
      }
    },
    120_000,
  )

  it('has the limits and gains of the whole plan where both come to the same days', async () => {
    const input = opened('torrenubia')
    const cache = newPlanCache()
    const first = (await planJob(input, { cache }))!
    const job = withBox(input.job, ({ at }) => ({ at: at + 0.05 }))
    const held = (await planJob({ ...input, job }, { cache, hold: first.campaign }))!
    const whole = (await planJob({ ...input, job }, { cache }))!
    expect(whole.held).toBeUndefined()
    expect(clocks(held)).toEqual(clocks(whole))
    expect(plain({ ...held, campaign: { ...held.campaign, bound: whole.campaign.bound } })).toEqual(
      plain(whole),
    )
  }, 120_000)

  it('is the searched plan where that has been searched already, as after undo', async () => {
    const input = opened('tern-cottage')
    const cache = newPlanCache()
    const first = (await planJob(input, { cache }))!
    const again = (await planJob(input, { cache, hold: first.campaign }))!
    expect(again.held).toBeUndefined()
    expect(again.campaign.days).toBe(first.campaign.days)
  }, 60_000)
})
