import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { planJob } from '@dawnlift/core/plan'
import { liftFile, outputsOf } from '@dawnlift/formats/outputs'
import { liftBlocks, writeLift } from '@dawnlift/formats/rs274'
import { demoJob } from './demo-job.js'

/**
 * Machine files of a whole campaign against writing the same bytes; then everything a plan gives.
 * Written from memory: the blocks of each file, ready as flat strings, joined and encoded into a new buffer. Made: the same
 * files from the plan, encoded alike. The aim is three tenths of that rate.
 */
export async function bench() {
  const plan = await planJob(await demoJob('tern-cottage'))
  if (!plan) throw new Error('nobody cancelled')
  const lifts = plan.campaign.days.flatMap(day => day.lifts).map(lift => liftFile(plan, lift))
  const blocks = lifts.map(lift => [...liftBlocks(lift)].map(flat))
  printRate(
    () => blocks.reduce((sum, each) => sum + Buffer.from(each.join('')).length, 0),
    () => lifts.reduce((sum, lift) => sum + Buffer.from(writeLift(lift)).length, 0),
  )
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

/** A string in one piece: joined ones would be walked through again by whoever reads them. */
const flat = (text: string): string => Buffer.from(text).toString()

/** CPU of both in turns, medians; both give the bytes they wrote. */
function printRate(copy: () => number, make: () => number): void {
  const rounds = Array.from({ length: 25 }, () => [cpuOf(copy), cpuOf(make)] as const).slice(5)
  const median = (of: (round: (typeof rounds)[number]) => number) =>
    rounds.map(of).sort((a, b) => a - b)[Math.floor(rounds.length / 2)]!
  const [copied, made] = [median(([each]) => each.cpu), median(([, each]) => each.cpu)]
  const [[{ bytes }, { bytes: same }]] = rounds as [(typeof rounds)[number]]
  if (bytes !== same) throw new Error('both write the same bytes')
  const rate = (cpu: number) => `${(bytes / 1e6 / (cpu / 1e6)).toFixed(0)} MB/s`
  console.log(
    `  machine files, ${(bytes / 1e6).toFixed(1)} MB: blocks ready in memory joined and encoded ${rate(copied)}, made and encoded ${rate(made)} of CPU: ${(copied / made).toFixed(2)} × that rate (aim ≥ 0.3: ${copied / made >= 0.3 ? 'met' : 'NOT MET'})`,
  )
}

function cpuOf(run: () => number): { readonly cpu: number; readonly bytes: number } {
  const before = process.cpuUsage()
  const bytes = run()
  const { user, system } = process.cpuUsage(before)
  return { cpu: user + system, bytes }
}
