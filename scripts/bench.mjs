/**
 * Runs every benchmark the packages export and prints medians and ratios; no test depends on a time.
 *
 * What is measured is compiled and bundled as for production, not served module by module: a module server puts a
 * look-up in front of every call between files, which costs small functions more than a plain loop.
 */
import { readdirSync, rmSync } from 'node:fs'
import { basename, join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { build } from 'vite'

const root = fileURLToPath(new URL('..', import.meta.url))
const only = process.argv[2]
const built = join(root, '.cache', 'bench')
rmSync(built, { recursive: true, force: true })

/** Bundled code lies elsewhere than its sources: files beside them are found all the same. */
const placesOfSources = {
  name: 'places-of-sources',
  enforce: 'pre',
  transform: (code, id) =>
    id.startsWith(root) && !id.includes('node_modules') && code.includes('import.meta.url')
      ? code.replaceAll('import.meta.url', JSON.stringify(pathToFileURL(id).href))
      : undefined,
}

const files = benchesBelow(join(root, 'packages'))
  .concat(benchesBelow(join(root, 'tests')))
  .filter(file => !only || file.includes(only))
for (const file of files) {
  const module = await import(await compiled(file))
  if (typeof module.bench !== 'function') continue
  console.log(`\n${file.slice(root.length)}`)
  const rows = []
  for (const { name, run, once } of await module.bench()) rows.push({ name, ...(await timed(run, once)) })
  const base = rows[0]
  for (const { name, median, cpu, runs } of rows) {
    console.log(
      `  ${name.padEnd(58)} ${time(median)}  CPU ${time(cpu)}  ${(cpu / base.cpu).toFixed(2).padStart(8)} ×  (${runs} runs)`,
    )
  }
  for (const line of module.report?.(rows) ?? []) console.log(`  ${line}`)
}
console.log(
  `\nNode ${process.version}, ${process.platform} ${process.arch}. Medians; × is the ratio of CPU time to the first row of each table.`,
)

/** One benchmark with all it calls as one file, as it would run in use. */
async function compiled(file) {
  const outDir = join(built, file.slice(root.length).replaceAll('/', '-'))
  await build({
    root,
    configFile: join(root, 'vitest.config.ts'),
    logLevel: 'error',
    plugins: [placesOfSources],
    build: { ssr: file, outDir, minify: false, copyPublicDir: false },
  })
  return pathToFileURL(join(outDir, basename(file).replace(/ts$/, 'js'))).href
}

/** Warmed, then run until about a second is spent, at least five times; what takes long is run once. */
async function timed(run, once = false) {
  if (!once) {
    await run()
    await run()
  }
  const [walls, cpus] = [[], []]
  const start = performance.now()
  while (walls.length < 5 || (performance.now() - start < 1000 && walls.length < 200)) {
    const [before, used] = [performance.now(), process.cpuUsage()]
    await run()
    walls.push(performance.now() - before)
    const { user, system } = process.cpuUsage(used)
    cpus.push((user + system) / 1000)
    if (once || (walls.length >= 3 && performance.now() - start > 20_000)) break
  }
  return { median: middle(walls), cpu: middle(cpus), runs: walls.length }
}

function middle(values) {
  return values.sort((a, b) => a - b)[Math.floor(values.length / 2)]
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
