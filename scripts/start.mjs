/** Plans the demo job with progress, prints its print days, then serves the app on loopback. */
import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('..', import.meta.url))
const dawnlift = args =>
  spawnSync(process.execPath, ['packages/cli/dist/main.js', ...args], { cwd: root, stdio: 'inherit' })
    .status ?? 1

const job = process.argv[2] ?? 'examples/torrenubia'
const planned = dawnlift(['plan', job])
if (planned > 1) process.exit(planned)
process.exit(dawnlift(['serve', job]))
