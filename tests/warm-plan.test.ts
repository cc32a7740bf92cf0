import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { initGeometry } from '@dawnlift/core/geometry'
import type { Embed, Job } from '@dawnlift/core/job'
import { newPlanCache, type Plan, planJob } from '@dawnlift/core/plan'
import { openJob } from '@dawnlift/formats/job-folder'
import { describe, expect, it } from 'vitest'
import { root } from './sources.js'

await initGeometry()
const at = (name: string) => join(root, 'examples/tern-cottage', name)
const read = (name: string) => (existsSync(at(name)) ? readFileSync(at(name)) : undefined)
const opened = openJob({ document: readFileSync(at('job.yaml'), 'utf8'), read })
if (!opened.ok) throw new Error(opened.problems[0]?.say)
const input = opened.value

const plain = ({ campaign, findings, calls, tally }: Plan) =>
  JSON.parse(JSON.stringify({ days: campaign.days, bound: campaign.bound, findings, calls, tally }))
const box = input.job.embeds.findIndex(embed => embed.kind === 'box')
const withBox = (change: (embed: Embed) => Partial<Embed>): Job => ({
  ...input.job,
  embeds: input.job.embeds.map((embed, i) => (i === box ? { ...embed, ...change(embed) } : embed)),
})

describe('a plan made with what earlier plans kept', () => {
  it('is the plan made afresh, edit after edit', async () => {
    const cache = newPlanCache()
    const first = await planJob(input, { cache })
    const pins = [{ kind: 'closed', section: 'A', dates: [input.job.calendar.firstDay] }] as const
    const edits: readonly Job[] = [
      withBox(({ at: station, bottom }) => ({ at: station + 0.05, bottom: bottom + 0.02 })),
      { ...input.job, pins, crew: { ...input.job.crew, changeOver: input.job.crew.changeOver + 600 } },
    ]
    for (const job of edits) {
      const warm = await planJob({ ...input, job }, { cache })
      const cold = await planJob({ ...input, job })
      expect(plain(warm!)).toEqual(plain(cold!))
    }
    expect(plain((await planJob(input, { cache }))!)).toEqual(plain(first!))
  }, 60_000)
})
