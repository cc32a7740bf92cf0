import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { initGeometry } from '@dawnlift/core/geometry'
import { planJob } from '@dawnlift/core/plan'
import { openJob } from '@dawnlift/formats/job-folder'
import { expect, it } from 'vitest'
import { root } from './sources.js'

const [, document] = /```yaml\n(.*?)```/s.exec(readFileSync(join(root, 'docs/guide/job.md'), 'utf8'))!

/** A mild year by the mast's clock. */
function hours(): Uint8Array {
  const rows = Array.from({ length: 8760 }, (_, hour) => {
    const stamp = new Date(Date.UTC(2025, 0, 1, hour)).toISOString().slice(0, 16).replace('T', ' ')
    return `${stamp},${16 + 4 * Math.sin(((hour % 24) - 9) / 3.82)},65,2,0`
  })
  return new TextEncoder().encode(['when,t,rh,w,r', ...rows].join('\n'))
}

it('the job of the guide is planned as it stands, to the top of its walls', async () => {
  await initGeometry()
  const opened = openJob({ document: document!, read: name => (name === 'hours.csv' ? hours() : undefined) })
  if (!opened.ok) throw new Error(opened.problems.map(({ at, say }) => `${at} ${say}`).join('\n'))
  const plan = await planJob(opened.value)
  expect(plan?.campaign.finished).toBe(true)
  expect(plan?.findings.filter(({ verdict }) => verdict === 'fail')).toEqual([])
})
