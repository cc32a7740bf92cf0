/** Runs every test. The browser tests read the built page, so `npm test` builds first (see `pretest`). */
import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('..', import.meta.url))
const ran = spawnSync('npx', ['--no-install', 'vitest', 'run', ...process.argv.slice(2)], {
  cwd: root,
  stdio: ['ignore', 'inherit', 'inherit'],
})
process.exit(ran.status ?? 1)
