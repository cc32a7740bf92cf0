/** Plans a job with progress (the demo house, unless one is named), prints its print days, then serves the app on loopback. */
import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('..', import.meta.url))
const dawnlift = args =>
  spawnSync(process.execPath, ['packages/cli/dist/main.js', ...args], { cwd: root, stdio: 'inherit' })
    .status ?? 1

// npm start -- my-house --port 8141
const given = process.argv.slice(2)
const named = given[0] !== undefined && !given[0].startsWith('-')
const job = named ? given[0] : 'examples/torrenubia'
const planned = dawnlift(['plan', job])
if (planned > 1) process.exit(planned)
process.exit(dawnlift(['serve', job, ...given.slice(named ? 1 : 0)]))
