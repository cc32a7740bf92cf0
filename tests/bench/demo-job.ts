import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { initGeometry } from '@dawnlift/core/geometry'
import type { Job } from '@dawnlift/core/job'
import type { PlanInput } from '@dawnlift/core/plan'
import { openJob } from '@dawnlift/formats/job-folder'
import { root } from '../sources.js'

/** A demo job, opened, with geometry ready. */
export async function demoJob(name: string): Promise<PlanInput> {
  await initGeometry()
  const at = (file: string) => join(root, 'examples', name, file)
  const read = (file: string) => (existsSync(at(file)) ? readFileSync(at(file)) : undefined)
  const opened = openJob({ document: readFileSync(at('job.yaml'), 'utf8'), read })
  if (!opened.ok) throw new Error(opened.problems.map(each => each.say).join('\n'))
  return opened.value
}

/** Metres from one house to the next: the demo's houses are narrower. */
const pitch = 20

/** The same house so many times in a row on one slab, under a machine that reaches them all. */
export function houses(job: Job, count: number): Job {
  const rows = Array.from({ length: count }, (_, k) => k)
  const named = <T extends { readonly id: string; readonly wall: string }>(things: readonly T[]): T[] =>
    rows.flatMap(k => things.map(thing => ({ ...thing, id: `${thing.id}-${k}`, wall: `${thing.wall}-${k}` })))
  const [from, to] = job.machine.reach.x
  return {
    ...job,
    walls: rows.flatMap(k =>
      job.walls.map(wall => ({
        ...wall,
        id: `${wall.id}-${k}`,
        centreline: {
          ...wall.centreline,
          points: wall.centreline.points.map(([x, y]) => [x + k * pitch, y] as const),
        },
      })),
    ),
    openings: named(job.openings),
    embeds: named(job.embeds),
    columns: named(job.columns),
    machine: {
      ...job.machine,
      reach: { ...job.machine.reach, x: [from, to + count * pitch] },
    },
  }
}

/** The job with one embed a hand further along its wall. */
export const withOneEmbedMoved = (job: Job, id: string): Job => ({
  ...job,
  embeds: job.embeds.map(embed => (embed.id === id ? { ...embed, at: embed.at + 0.1 } : embed)),
})
