import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { planJob } from '@dawnlift/core/plan'
import { outputsOf } from '@dawnlift/formats/outputs'
import { demoJob } from './demo-job.js'

/** Machine files of a whole campaign against writing the same bytes; then everything a plan gives. */
export async function bench() {
  const plan = await planJob(await demoJob('tern-cottage'))
  if (!plan) throw new Error('nobody cancelled')
  const outputs = outputsOf(plan, { at: Date.UTC(2026, 0, 1) / 1000, sequence: 0 })
  const machine = outputs.filter(output => output.name.startsWith('machine/'))
  const folder = mkdtempSync(join(tmpdir(), 'dawnlift-bench-'))
  process.on('exit', () => rmSync(folder, { recursive: true, force: true }))
  for (const { name } of outputs) mkdirSync(dirname(join(folder, name)), { recursive: true })
  const made = await Promise.all(machine.map(async ({ name, make }) => ({ name, content: await make() })))
  const size = `${(made.reduce((sum, { content }) => sum + content.length, 0) / 1e6).toFixed(1)} MB`
  const write = (name: string, content: string | Uint8Array) => writeFileSync(join(folder, name), content)
  return [
    {
      name: `${size} of machine files from memory to disk`,
      run: () => {
        for (const { name, content } of made) write(name, content)
      },
    },
    {
      name: `the same ${size}, made and written`,
      run: async () => {
        for (const { name, make } of machine) write(name, await make())
      },
    },
    {
      name: `all ${outputs.length} files of the plan, made and written`,
      run: async () => {
        for (const { name, make } of outputs) write(name, await make())
      },
    },
  ]
}
