import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Lift } from '@dawnlift/core/campaign'
import { type Bounds, initGeometry, pathBounds } from '@dawnlift/core/geometry'
import { machinePoint } from '@dawnlift/core/machine'
import { type Plan, planJob } from '@dawnlift/core/plan'
import { liftRun, type Pass } from '@dawnlift/core/route'
import { openJob } from '@dawnlift/formats/job-folder'
import { liftFile } from '@dawnlift/formats/outputs'
import { type FeedMove, inspectRun, readMachineFile, writeLift } from '@dawnlift/formats/rs274'
import { beforeAll, describe, expect, it } from 'vitest'
import { feedEnds, interpret, outsideInterpreter } from '../packages/formats/src/rs274/outside-interpreter.js'
import { root } from './sources.js'

const program = outsideInterpreter()
const skipped = program ? '' : ' (skipped: no interpreter; run `node scripts/outside-tools.mjs`)'

const plans = new Map<string, Plan>()
const jobs = ['fixtures/jobs/garden-wall', 'examples/tern-cottage']
beforeAll(async () => {
  await initGeometry()
  for (const job of jobs) plans.set(job, await planOf(job))
}, 60_000)

async function planOf(job: string): Promise<Plan> {
  const read = (name: string) => readFileSync(join(root, job, name))
  const opened = openJob({ document: read('job.yaml').toString(), read })
  if (!opened.ok) throw new Error(opened.problems[0]?.say)
  const plan = await planJob(opened.value)
  if (!plan) throw new Error('nobody cancelled')
  return plan
}

/** Lifts with what is hard about them: the first, one that ends at a lintel, and the last with its change of plan. */
const lifts: readonly (readonly [
  job: string,
  which: (lifts: readonly Lift[]) => Lift | undefined,
  what: string,
])[] = [
  ['fixtures/jobs/garden-wall', all => all[0], 'the first lift of the garden wall'],
  ['fixtures/jobs/garden-wall', all => all[1], 'its second, which ends at a lintel'],
  ['fixtures/jobs/garden-wall', all => all[2], 'its last, over the hatch'],
  ['examples/tern-cottage', all => all[0], 'the first lift of the cottage, in inches'],
  [
    'examples/tern-cottage',
    all => all.find(lift => lift.binding.kind.includes('lintel')),
    'a lift of the cottage under its lintels',
  ],
  ['examples/tern-cottage', all => all.at(-1), 'its last lift'],
]

function told(job: string, which: (lifts: readonly Lift[]) => Lift | undefined) {
  const plan = plans.get(job)!
  const lift = which(plan.campaign.days.flatMap(day => day.lifts))
  if (!lift) throw new Error(`${job} has no such lift`)
  const file = liftFile(plan, lift)
  const text = writeLift(file)
  const read = readMachineFile(text)
  if (!read.ok) throw new Error(JSON.stringify(read.problems[0]))
  const { machine } = plan.job
  return { plan, lift, file, text, run: read.value, machine, summary: inspectRun(read.value, { machine }) }
}

const off = (found: number | undefined, planned: number): number =>
  Math.abs((found ?? Number.NaN) / planned - 1)

/** The box of what the plan lays, in the machine frame, by its paths alone. */
function plannedBox({ plan, lift, file }: ReturnType<typeof told>): Bounds {
  const { machineOrigin, machine } = plan.job
  const passes: readonly Pass[] = liftRun(file.routes, machine, file.options, file).layers.flatMap(
    layer => layer.passes,
  )
  expect(passes.length).toBeGreaterThanOrEqual(lift.lastLayer - lift.firstLayer + 1)
  const boxes = passes.map(({ path }) =>
    pathBounds({ ...path, points: path.points.map(point => machinePoint(machineOrigin, point)) }),
  )
  return {
    least: [Math.min(...boxes.map(box => box.least[0])), Math.min(...boxes.map(box => box.least[1]))],
    most: [Math.max(...boxes.map(box => box.most[0])), Math.max(...boxes.map(box => box.most[1]))],
  }
}

describe.each(lifts)('the machine file of %s read back, $2', (job, which) => {
  it('lays what the campaign planned: length and volume to a hundredth of a per cent', () => {
    const { lift, summary } = told(job, which)
    expect(off(summary.length, lift.length)).toBeLessThan(1e-4)
    expect(off(summary.volume, lift.volume)).toBeLessThan(1e-4)
  })
  it('lies where the plan lies, to 0.01 mm, from its first layer to its last', () => {
    const all = told(job, which)
    const { x, y, z } = all.summary.extents!
    const { least, most } = plannedBox(all)
    for (const [found, planned] of [
      [x[0], least[0]],
      [x[1], most[0]],
      [y[0], least[1]],
      [y[1], most[1]],
    ] as const)
      expect(Math.abs(found - planned)).toBeLessThan(1e-5)
    const { lift, plan } = all
    const height = (layer: number) => plan.job.machineOrigin.z + layer * plan.job.print.layerHeight
    expect(Math.abs(z[0] - height(lift.firstLayer))).toBeLessThan(1e-5)
    expect(Math.abs(z[1] - height(lift.lastLayer))).toBeLessThan(1e-5)
  })
  it('takes as long for each layer as the campaign’s clock says, to a tenth of a per cent', () => {
    const { lift, summary } = told(job, which)
    const held = (layer: number) =>
      lift.holds.filter(hold => hold.afterLayer === layer).reduce((sum, hold) => sum + hold.duration, 0)
    const layers = lift.lastLayer - lift.firstLayer + 1
    expect(summary.layers.length).toBe(layers)
    // The first layer has the way to the wall before it, the last the raise behind it.
    for (let i = 1; i < layers - 1; i++) {
      const clock = lift.layerEnds[i]! - lift.layerEnds[i - 1]! - held(lift.firstLayer + i - 1)
      expect(off(summary.layers[i]!.plannedTime, clock)).toBeLessThan(1e-3)
    }
  })
  it('never pumps on a way without bead, and never asks the heading for more than its axis gives', () => {
    const { run, summary, machine } = told(job, which)
    expect(summary.notes).toEqual([])
    let pumping = false
    for (const step of run.steps) {
      if (step.kind === 'pump') pumping = step.on
      if (step.kind === 'rapid' || step.kind === 'stop') expect(pumping).toBe(false)
    }
    expect(summary.headingRateMost).toBeLessThanOrEqual(machine.headingRate * (1 + 1e-9))
    for (const heading of summary.headingRange!)
      expect(Math.abs(heading)).toBeLessThanOrEqual(machine.headingTravel + 1e-6)
  })
  // independent: the interpreter of Debian's linuxcnc-uspace, run as a program; its calls are printed to four decimals
  it.skipIf(!program)(
    `is taken by an outside interpreter, which ends every move at the same point${skipped}`,
    () => {
      const { text, run } = told(job, which)
      const { accepted, calls, says } = interpret(program!, text)
      expect([accepted, says]).toEqual([true, ''])
      const ours = run.steps.filter((step): step is FeedMove => step.kind === 'line' || step.kind === 'arc')
      const theirs = feedEnds(calls)
      expect(theirs.length).toBe(ours.length)
      const worst = ours.reduce((most, { to, heading }, i) => {
        const [x, y, z, , , c] = theirs[i]!
        return Math.max(
          most,
          Math.abs(to.x! * 1000 - x!),
          Math.abs(to.y! * 1000 - y!),
          Math.abs(to.z! * 1000 - z!),
          Math.abs(((heading ?? 0) * 180) / Math.PI - c!),
        )
      }, 0)
      expect(worst).toBeLessThan(1e-4)
    },
  )
})
