/** Runs every benchmark the packages export and prints medians and ratios; no test depends on a time. */
import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { createServer } from 'vite'

const root = fileURLToPath(new URL('..', import.meta.url))
const only = process.argv[2]
const vite = await createServer({
  root,
  configFile: join(root, 'vitest.config.ts'),
  server: { middlewareMode: true },
  appType: 'custom',
  logLevel: 'error',
})

const files = benchesBelow(join(root, 'packages'))
  .concat(benchesBelow(join(root, 'tests')))
  .filter(file => !only || file.includes(only))
for (const file of files) {
  const module = await vite.ssrLoadModule(file)
  if (typeof module.bench !== 'function') continue
  console.log(`\n${file.slice(root.length)}`)
  const rows = []
  for (const { name, run, once } of await module.bench()) rows.push({ name, ...(await timed(run, once)) })
  const base = rows[0]
  for (const { name, median, least, runs } of rows) {
    console.log(
      `  ${name.padEnd(58)} ${time(median)}  least ${time(least)}  ${(median / base.median).toFixed(2).padStart(8)} ×  (${runs} runs)`,
    )
  }
  for (const line of module.report?.(rows) ?? []) console.log(`  ${line}`)
}
await vite.close()
console.log(
  `\nNode ${process.version}, ${process.platform} ${process.arch}. × is the ratio of medians to the first row of each table.`,
)

/** Warmed, then run until about a second is spent, at least five times; what takes long is run once. */
async function timed(run, once = false) {
  if (!once) {
    await run()
    await run()
  }
  const times = []
  const start = performance.now()
  while (times.length < 5 || (performance.now() - start < 1000 && times.length < 200)) {
    const before = performance.now()
    await run()
    times.push(performance.now() - before)
    if (once || (times.length >= 3 && performance.now() - start > 20_000)) break
  }
  times.sort((a, b) => a - b)
  return { median: times[Math.floor(times.length / 2)], least: times[0], runs: times.length }
}

function time(ms) {
  return (
    ms < 1
      ? `${(ms * 1000).toFixed(1)} µs`
      : ms < 1000
        ? `${ms.toFixed(1)} ms`
        : `${(ms / 1000).toFixed(2)} s`
  ).padStart(10)
}

function benchesBelow(folder) {
  return readdirSync(folder, { withFileTypes: true }).flatMap(entry => {
    if (['node_modules', 'dist', 'site'].includes(entry.name)) return []
    const path = join(folder, entry.name)
    return entry.isDirectory() ? benchesBelow(path) : entry.name.endsWith('.bench.ts') ? [path] : []
  })
}
