import type { Lift } from '@dawnlift/core/campaign'
import { type Bounds, initGeometry, pathBounds } from '@dawnlift/core/geometry'
import { machinePoint } from '@dawnlift/core/machine'
import type { Plan } from '@dawnlift/core/plan'
import { layerRouteOf, liftRun } from '@dawnlift/core/route'
import { liftFile } from '@dawnlift/formats/outputs'
import {
  type FeedMove,
  inspectRun,
  type LiftFile,
  type RapidMove,
  readMachineFile,
  writeLift,
} from '@dawnlift/formats/rs274'
import { describe, expect, it } from 'vitest'
import {
  feedEnds,
  interpret,
  outsideInterpreter,
  rapidEnds,
} from '../packages/formats/src/rs274/outside-interpreter.js'
import { jobs, planOf } from './planned-jobs.js'

const program = outsideInterpreter()
const skipped = program ? '' : ' (skipped: no interpreter; run `node scripts/outside-tools.mjs`)'

/** One file to be written: a lift, or what is left of it from its middle layer and second bead on. */
interface Case {
  readonly name: string
  readonly plan: Plan
  readonly lift: Lift
  readonly file: LiftFile
}

function casesOf(plan: Plan, lift: Lift): Case[] {
  const file = liftFile(plan, lift)
  const middle = Math.floor((lift.firstLayer + lift.lastLayer) / 2)
  const fromPass = layerRouteOf(file.routes, middle).passes.length > 1 ? 1 : 0
  return [
    { name: `lift ${lift.id}`, plan, lift, file },
    {
      name: `lift ${lift.id} again from layer ${middle}, bead ${fromPass + 1}`,
      plan,
      lift,
      file: { ...file, fromLayer: middle, fromPass },
    },
  ]
}

await initGeometry()
const plans = new Map<string, Plan>()
for (const job of jobs) plans.set(job, await planOf(job))

function casesOfJob(job: string): Case[] {
  const plan = plans.get(job)!
  return plan.campaign.days.flatMap(day => day.lifts).flatMap(lift => casesOf(plan, lift))
}

/** Each file is written and read once, whatever is asked of it; only the last is kept, they are megabytes. */
let last: { readonly of: LiftFile; readonly told: Told } | undefined

function told(each: Case): Told {
  if (last?.of !== each.file) last = { of: each.file, told: tell(each) }
  return last.told
}

function tell({ plan, lift, file }: Case) {
  const text = writeLift(file)
  const read = readMachineFile(text)
  if (!read.ok) throw new Error(JSON.stringify(read.problems[0]))
  const { machine } = plan.job
  const planned = liftRun(file.routes, machine, file.options, file)
  return {
    plan,
    lift,
    file,
    text,
    run: read.value,
    machine,
    planned,
    summary: inspectRun(read.value, { machine }),
  }
}

type Told = ReturnType<typeof tell>

const off = (found: number | undefined, planned: number): number =>
  Math.abs((found ?? Number.NaN) / planned - 1)

/** The box of what the plan lays, in the machine frame, by its paths alone. */
function plannedBox({ plan, planned }: Told): Bounds {
  const boxes = planned.layers
    .flatMap(layer => layer.passes)
    .map(({ path }) =>
      pathBounds({ ...path, points: path.points.map(point => machinePoint(plan.job.machineOrigin, point)) }),
    )
  return {
    least: [Math.min(...boxes.map(box => box.least[0])), Math.min(...boxes.map(box => box.least[1]))],
    most: [Math.max(...boxes.map(box => box.most[0])), Math.max(...boxes.map(box => box.most[1]))],
  }
}

function expectWhereItLies(all: Told): void {
  const { x, y, z } = all.summary.extents!
  const { least, most } = plannedBox(all)
  const height = (layer: number) => all.plan.job.machineOrigin.z + layer * all.plan.job.print.layerHeight
  for (const [found, planned] of [
    [x[0], least[0]],
    [x[1], most[0]],
    [y[0], least[1]],
    [y[1], most[1]],
    [z[0], height(all.file.fromLayer)],
    [z[1], height(all.file.toLayer)],
  ] as const)
    expect(Math.abs(found - planned)).toBeLessThan(1e-5)
}

function expectWhatItLays({ planned, summary, lift, file }: Told): void {
  const passes = planned.layers.flatMap(layer => layer.passes)
  const sum = (of: (pass: (typeof passes)[number]) => number) =>
    passes.reduce((total, pass) => total + of(pass), 0)
  expect(
    off(
      summary.length,
      sum(pass => pass.length),
    ),
  ).toBeLessThan(1e-4)
  expect(
    off(
      summary.volume,
      sum(pass => pass.volume),
    ),
  ).toBeLessThan(1e-4)
  if (file.fromPass !== undefined) return
  expect(off(summary.length, lift.length)).toBeLessThan(1e-4)
  expect(off(summary.volume, lift.volume)).toBeLessThan(1e-4)
}

/** By the plan's run, the raise behind the last layer with it; and where the whole lift is run, by the campaign's clock. */
function expectHowLong({ planned, summary, lift, file, machine }: Told): void {
  expect(summary.layers.length).toBe(planned.layers.length)
  planned.layers.forEach(({ time }, i) => {
    const raised = i === planned.layers.length - 1 ? planned.end.time : 0
    expect(off(summary.layers[i]!.plannedTime, time + raised)).toBeLessThan(1e-3)
  })
  if (file.fromPass !== undefined) return
  // the days do not know in which order sections will stand: ways over taller neighbours come on top
  const { layers: alone } = liftRun(file.routes, machine, file.options, { ...file, standing: [] })
  for (let i = 1; i < planned.layers.length; i++) {
    const held = lift.holds
      .filter(hold => hold.afterLayer === lift.firstLayer + i - 1)
      .reduce((sum, hold) => sum + hold.duration, 0)
    const clock = lift.layerEnds[i]! - lift.layerEnds[i - 1]! - held
    expect(off(alone[i]!.time, clock)).toBeLessThan(1e-3)
  }
}

/** Pump on, its lag waited for; off before every rapid move, stop and end; and never told on twice. */
function expectPumpInOrder({ run, machine }: Told): void {
  let pumping = false
  run.steps.forEach((step, i) => {
    if (step.kind === 'rapid' || step.kind === 'stop') expect(pumping).toBe(false)
    if (step.kind !== 'pump') return
    if (step.on) {
      expect(pumping).toBe(false)
      const next = run.steps[i + 1]
      if (machine.pump.startLag > 0)
        expect(next).toMatchObject({ kind: 'dwell', seconds: machine.pump.startLag })
    }
    pumping = step.on
  })
  expect(pumping).toBe(false)
}

/** Sections and layers that lie when a lift begins, by the clock of the campaign alone. */
function standingAt({ plan, lift }: Told) {
  return plan.campaign.days
    .flatMap(day => day.lifts)
    .filter(other => other.section !== lift.section && other.end <= lift.start)
    .flatMap(({ section, firstLayer, lastLayer }) =>
      plan.bands
        .find(each => each.section === section)!
        .bands.filter(band => band.fromLayer <= lastLayer && band.toLayer >= firstLayer)
        .map(({ body, toLayer }) => ({
          outlines: body,
          top: Math.min(toLayer, lastLayer) * plan.job.print.layerHeight + plan.job.machineOrigin.z,
        })),
    )
}

/**
 * independent: every way over is walked in steps of 20 mm, and no step may be inside a wall taller than the nozzle is high;
 * nor may the nozzle come in, or be left, lower than anything that stands.
 */
function expectClearOfNeighbours(all: Told): void {
  const standing = standingAt(all)
  const { machineOrigin: origin } = all.plan.job
  const placed = standing.map(({ outlines, top }) => ({
    top,
    outlines: outlines.map(({ outer, holes }) =>
      [outer, ...holes].map(ring => ring.map(point => machinePoint(origin, point))),
    ),
  }))
  const rapids = all.run.steps.filter((step): step is RapidMove => step.kind === 'rapid')
  const highest = Math.max(0, ...standing.map(({ top }) => top))
  expect(rapids[0]!.to.z).toBeGreaterThan(highest)
  expect(rapids.at(-1)!.to.z).toBeGreaterThan(highest)
  const ways = new Set<string>()
  for (const { from, to } of rapids) {
    if (from.x === undefined || from.y === undefined) continue
    const taller = placed.filter(({ top }) => top > to.z!)
    const way = `${from.x} ${from.y} ${to.x} ${to.y} ${taller.length}`
    if (taller.length === 0 || ways.has(way)) continue
    ways.add(way)
    const steps = Math.ceil(Math.hypot(to.x! - from.x, to.y! - from.y) / 0.02)
    for (let i = 5; i <= steps - 5; i++) {
      const [x, y] = [from.x + (i / steps) * (to.x! - from.x), from.y + (i / steps) * (to.y! - from.y)]
      for (const { outlines } of taller)
        for (const rings of outlines)
          expect(rings.reduce((sum, ring) => sum + Math.abs(windings(x, y, ring)), 0) % 2).toBe(0)
    }
  }
}

/** How often an outline goes round a place. */
function windings(x: number, y: number, outline: readonly (readonly [number, number])[]): number {
  const angles = outline.map(([px, py]) => Math.atan2(py - y, px - x))
  const turned = angles.reduce((sum, angle, i) => {
    const turn = angles[(i + 1) % angles.length]! - angle
    return sum + turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI))
  }, 0)
  return Math.round(turned / (2 * Math.PI))
}

function expectHeadingFollows({ summary, machine }: Told): void {
  expect(summary.notes).toEqual([])
  expect(summary.headingRateMost).toBeLessThanOrEqual(machine.headingRate * (1 + 1e-9))
  for (const heading of summary.headingRange!)
    expect(Math.abs(heading)).toBeLessThanOrEqual(machine.headingTravel + 1e-6)
}

/** Farthest any end point lies from where the interpreter says, in mm and degrees. */
function farthestApart(ours: readonly (FeedMove | RapidMove)[], theirs: readonly number[][]): number {
  expect(theirs.length).toBe(ours.length)
  return ours.reduce((most, { to, heading }, i) => {
    const [x, y, z, , , c] = theirs[i]!
    const apart = (own: number | undefined, other: number) => (own === undefined ? 0 : Math.abs(own - other))
    const mm = (value: number | undefined) => (value === undefined ? undefined : value * 1000)
    const degrees = heading === undefined ? undefined : (heading * 180) / Math.PI
    return Math.max(most, apart(mm(to.x), x!), apart(mm(to.y), y!), apart(mm(to.z), z!), apart(degrees, c!))
  }, 0)
}

function expectTakenOutside({ text, run }: Told): void {
  const { accepted, calls, says } = interpret(program!, text)
  expect([accepted, says]).toEqual([true, ''])
  const feeds = run.steps.filter((step): step is FeedMove => step.kind === 'line' || step.kind === 'arc')
  const rapids = run.steps.filter((step): step is RapidMove => step.kind === 'rapid')
  // its calls are printed to four decimals of a millimetre and of a degree
  expect(farthestApart(feeds, feedEnds(calls))).toBeLessThan(1e-4)
  expect(farthestApart(rapids, rapidEnds(calls))).toBeLessThan(1e-4)
}

describe.each(jobs)('machine files of %s, read back: every lift, whole and from its middle on,', job => {
  describe.each(casesOfJob(job))('$name', each => {
    it('lies where the plan lies, to 0.01 mm', () => expectWhereItLies(told(each)))
    it('lays the planned length and volume, to a hundredth of a per cent', () => expectWhatItLays(told(each)))
    it('takes as long for each layer as planned, to a tenth of a per cent', () => expectHowLong(told(each)))
    it('pumps only along its beads, and is off before every way over', () => expectPumpInOrder(told(each)))
    it('comes, travels and goes clear of what stands by then', () => expectClearOfNeighbours(told(each)))
    it('never asks the heading for more than its axis gives', () => expectHeadingFollows(told(each)))
    // independent: the interpreter of Debian's linuxcnc-uspace, run as a program
    it.skipIf(!program)(
      `is taken by an outside interpreter, which ends every move at the same point${skipped}`,
      () => expectTakenOutside(told(each)),
      30_000,
    )
  })
})
