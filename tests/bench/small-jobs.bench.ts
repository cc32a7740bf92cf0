import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { scheduleCampaign } from '@dawnlift/core/campaign'
import { assert } from '@dawnlift/core/result'
import { drawnJobs } from '../../packages/core/src/campaign/fixtures/drawn-jobs.js'
import { smallJobInput } from '../../packages/core/src/campaign/fixtures/small-job-input.js'
import { smallJobMilp } from '../../packages/core/src/campaign/fixtures/small-job-milp.js'
import { type SmallJob, smallJobs } from '../../packages/core/src/campaign/fixtures/small-jobs.js'

/** Longer than this nobody waits for a proof [s]: those jobs are left out of both rows, and named. */
const PATIENCE = 10

/**
 * Small jobs to the proven shortest campaign, by our scheduler and as a mixed-integer program by an outside solver (CBC), one after the
 * other in one run. The solver's answers are compared with what another outside solver has proved.
 */
export async function bench() {
  const version = spawnSync('cbc', ['-quit'], { encoding: 'utf8' })
  if (version.error || version.status !== 0) {
    console.log('  skipped: the outside solver “cbc” is not installed (Debian: coinor-cbc)')
    return []
  }
  const name = /Version:\s*(\S+)/.exec(version.stdout)?.[1] ?? 'of unknown version'
  const all = [...smallJobs, ...drawnJobs]
  const proved = all.filter(job => solvedBy(job) !== undefined)
  const late = all.filter(job => !proved.includes(job)).map(job => job.name)
  for (const job of proved)
    assert(solvedBy(job) === job.optimum, `the outside solver’s answer to ${job.name} is the proved one`)
  if (late.length > 0)
    console.log(`  without proof of the solver in ${PATIENCE} s, left out: ${late.join('; ')}`)
  const inputs = proved.map(smallJobInput)
  return [
    {
      name: `${proved.length} small jobs to proof, our scheduler`,
      run: () => inputs.forEach(input => void scheduleCampaign(input)),
    },
    {
      name: `the same as mixed-integer programs, CBC ${name}`,
      run: () => proved.forEach(job => void solve(job)),
      once: true,
    },
  ]
}

const answers = new Map<string, number | 'none' | undefined>()

function solvedBy(job: SmallJob): number | 'none' | undefined {
  if (!answers.has(job.name)) answers.set(job.name, solve(job))
  return answers.get(job.name)
}

/** The day the walls are up, none if they cannot be; nothing without a proof. */
function solve(job: SmallJob): number | 'none' | undefined {
  const folder = mkdtempSync(join(tmpdir(), 'dawnlift-milp-'))
  try {
    const file = join(folder, 'job.lp')
    writeFileSync(file, smallJobMilp(job))
    const answer = spawnSync('cbc', [file, '-sec', String(PATIENCE), '-solve', '-quit'], {
      encoding: 'utf8',
      timeout: 3000 * PATIENCE,
    })
    const result = /^Result - (.*)$/m.exec(answer.stdout)?.[1] ?? ''
    if (/infeasible/.test(result)) return 'none'
    if (!result.startsWith('Optimal')) return undefined
    return Math.round(Number(/Objective value:\s+([\d.]+)/.exec(answer.stdout)?.[1]))
  } finally {
    rmSync(folder, { recursive: true })
  }
}
