import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { type Plan, planJob } from '@dawnlift/core/plan'
import { liftFile, outputsOf } from '@dawnlift/formats/outputs'
import { liftWriter } from '@dawnlift/formats/rs274'
import { demoJob } from './demo-job.js'

/** Machine files of a whole campaign against the same bytes ready in memory; then everything a plan gives. */
export async function bench() {
  const plan = await planJob(await demoJob('torrenubia'))
  if (!plan) throw new Error('nobody cancelled')
  const folder = mkdtempSync(join(tmpdir(), 'dawnlift-bench-'))
  process.on('exit', () => rmSync(folder, { recursive: true, force: true }))
  printRates(plan, folder)
  const outputs = outputsOf(plan, { at: Date.UTC(2026, 0, 1) / 1000, sequence: 0 })
  for (const { name } of outputs) mkdirSync(dirname(join(folder, name)), { recursive: true })
  return [
    {
      name: `all ${outputs.length} files of the plan, made and written`,
      run: async () => {
        for (const { name, make } of outputs) writeFileSync(join(folder, name), await make())
      },
    },
  ]
}

/** A string in one piece: joined ones would be walked through again by whoever reads them. */
const flat = (text: string): string => Buffer.from(text).toString()

/**
 * The files made from the plan, by a writer that knows nothing of it yet, against the same bytes ready in memory: read as
 * text in blocks, joined and encoded; as bytes, copied; as bytes, written to disk, where ours are made and written.
 * The aim, three tenths of the rate of writing the same bytes from memory, leaves open which; all three are told.
 */
function printRates(plan: Plan, folder: string): void {
  const lifts = plan.campaign.days.flatMap(day => day.lifts).map(lift => liftFile(plan, lift))
  const write = liftWriter()
  const ready = lifts.map(write)
  const blocks = ready.map(bytes => linesOf(bytes, 140).map(flat))
  const toDisk = (bytes: Uint8Array, i: number) => writeFileSync(join(folder, `${i}.ngc`), bytes)
  const told = cpuInTurns({
    joined: () => blocks.map(each => Buffer.from(each.join(''))),
    copied: () => ready.map(bytes => Buffer.from(bytes)),
    onDisk: () => ready.forEach(toDisk),
    made: () => lifts.map(liftWriter()),
    madeOnDisk: () => {
      const again = liftWriter()
      lifts.forEach((lift, i) => {
        toDisk(again(lift), i)
      })
    },
  })
  const size = ready.reduce((sum, bytes) => sum + bytes.length, 0) / 1e6
  const rate = (cpu: number) => `${((size / cpu) * 1e6).toFixed(0)} MB/s`
  const against = (words: string, memory: number, ours: number) =>
    console.log(
      `  ${words} ${rate(memory)}, ours ${rate(ours)}: ${(memory / ours).toFixed(2)} × that rate (aim ≥ 0.3: ${memory / ours >= 0.3 ? 'met' : 'NOT MET'})`,
    )
  console.log(`  machine files of ${lifts.length} lifts, ${size.toFixed(1)} MB, by CPU:`)
  against('text in blocks, joined and encoded', told.joined, told.made)
  against('bytes in memory, copied', told.copied, told.made)
  against('bytes in memory, written to disk', told.onDisk, told.madeOnDisk)
}

/** The text in blocks of so many lines. */
const linesOf = (bytes: Uint8Array, lines: number): string[] =>
  new TextDecoder().decode(bytes).match(new RegExp(`(?:.*\\n){1,${lines}}`, 'g')) ?? []

/** CPU in µs of each in turns, medians. */
function cpuInTurns<Name extends string>(runs: Readonly<Record<Name, () => unknown>>): Record<Name, number> {
  const names = Object.keys(runs) as Name[]
  const rounds = Array.from({ length: 25 }, () => names.map(name => cpuOf(runs[name]))).slice(5)
  const median = (k: number) => rounds.map(round => round[k]!).sort((a, b) => a - b)[rounds.length >> 1]!
  return Object.fromEntries(names.map((name, k) => [name, median(k)])) as Record<Name, number>
}

function cpuOf(run: () => unknown): number {
  const before = process.cpuUsage()
  run()
  const { user, system } = process.cpuUsage(before)
  return user + system
}
