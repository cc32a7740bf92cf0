import { machineProfile } from '@dawnlift/core/machine'
import { layerRouteOf, liftRun, routeSection } from '@dawnlift/core/route'
import { describe, expect, it } from 'vitest'
import { inspectRun, liftWriter, type MachineRun, readMachineFile, writeLift, writeRestart } from './index.js'
import { inventedBands, inventedLift, inventedOrigin } from './invented-lift.js'
import type { LiftFile } from './lift-file.js'

function read(text: string): MachineRun {
  const result = readMachineFile(text)
  if (!result.ok) throw new Error(JSON.stringify(result.problems.slice(0, 3)))
  return result.value
}

function planOf(file: LiftFile) {
  const run = liftRun(file.routes, file.machine, file.options, file)
  const passes = run.layers.flatMap(layer => layer.passes)
  const sum = (of: (pass: (typeof passes)[number]) => number) =>
    passes.reduce((total, pass) => total + of(pass), 0)
  return { run, passes, length: sum(pass => pass.length), volume: sum(pass => pass.volume), time: run.time }
}

const relative = (found: number | undefined, planned: number) => Math.abs((found ?? Number.NaN) / planned - 1)

const gantry = machineProfile('gantry-12')!
const inches = { ...gantry, words: { ...gantry.words, units: 'G20' as const, rotary: 'A' as const } }
const machines = [
  ['a tangential nozzle in millimetres', gantry],
  ['a tangential nozzle in inches', inches],
  ['a round nozzle', machineProfile('gantry-12-round')!],
  ['a machine without lags', { ...gantry, pump: { ...gantry.pump, startLag: 0, stopLag: 0 } }],
  ['a machine with an air valve', { ...gantry, words: { ...gantry.words, extraOn: 'M7', extraOff: 'M9' } }],
] as const

describe.each(machines)('the file of a lift for %s', (_, machine) => {
  const file = inventedLift({ machine })
  const text = writeLift(file)
  const result = readMachineFile(text, { rotary: machine.words.rotary })
  if (!result.ok) throw new Error(JSON.stringify(result.problems.slice(0, 3)))
  const run = result.value
  const summary = inspectRun(run, { machine })
  const plan = planOf(file)

  it('gives back length and volume to a hundredth of a per cent', () => {
    expect(relative(summary.length, plan.length)).toBeLessThan(1e-4)
    expect(relative(summary.volume, plan.volume)).toBeLessThan(1e-4)
  })
  it('gives back the time, lift and layers, to a tenth of a per cent', () => {
    expect(relative(summary.plannedTime, plan.time)).toBeLessThan(1e-3)
    expect(summary.layers.length).toBe(plan.run.layers.length)
    // the last layer carries the last raise as well
    summary.layers.slice(0, -1).forEach((layer, i) => {
      expect(relative(layer.plannedTime, plan.run.layers[i]!.time)).toBeLessThan(1e-3)
    })
  })
  it('gives back every corner of every bead where it is, to 0.01 mm', () => {
    const { x, y, turn, z } = inventedOrigin
    const laid = new Set(
      run.steps.flatMap(step =>
        step.kind === 'line' || step.kind === 'arc'
          ? [step.from, step.to].map(at => `${at.x!.toFixed(5)} ${at.y!.toFixed(5)} ${at.z!.toFixed(5)}`)
          : [],
      ),
    )
    const near = (value: number) => [-1e-5, 0, 1e-5].map(off => (value + off).toFixed(5))
    for (const layer of plan.run.layers)
      for (const pass of layer.passes)
        for (const [px, py] of pass.path.points) {
          const mx = x + px * Math.cos(turn) - py * Math.sin(turn)
          const my = y + px * Math.sin(turn) + py * Math.cos(turn)
          const mz = z + layer.layer * 0.02
          const found = near(mx).some(a => near(my).some(b => near(mz).some(c => laid.has(`${a} ${b} ${c}`))))
          expect(found).toBe(true)
        }
  })
  it('never pumps on a rapid move', () => expect(summary.notes).toEqual([]))
  it('never asks the heading to turn faster than its axis can', () => {
    if (machine.headingRate > 0)
      expect(summary.headingRateMost).toBeLessThanOrEqual(machine.headingRate * (1 + 1e-9))
    else expect(text).not.toMatch(/^G[0123].*[ABC]/m)
  })
  it('keeps the heading within its travel', () => {
    if (machine.headingRate === 0) return
    for (const heading of summary.headingRange!)
      expect(Math.abs(heading)).toBeLessThanOrEqual(machine.headingTravel + 1e-6)
  })
  it('has lines a controller takes: short, plain, switching the pump apart from moving', () => {
    for (const line of text.split('\n')) {
      expect(line.length).toBeLessThanOrEqual(256)
      expect(line).toMatch(/^[ -~]*$/)
      if (/M[345]\b/.test(line)) expect(line).not.toMatch(/G[0123]\b/)
    }
  })
})

describe('the file of a lift', () => {
  const file = inventedLift()
  it('says what the pump is set to for one of the flow its reader knows', () => {
    const pump = { ...gantry.pump, settingPerFlow: 600_000 }
    const head = (units: 'metric' | 'imperial') =>
      writeLift(inventedLift({ machine: { ...gantry, pump }, options: { ...file.options, units } }))
    // Hand: 600 000 S per m³/s is 10 S for each L/min; a US gallon is 3.785412 L.
    expect(head('metric')).toContain('; S 10 is 1 L/min')
    expect(head('imperial')).toContain('; S 37.8541 is 1 gal/min')
  })
  const text = writeLift(file)

  it('has the extents of the plan to 0.01 mm', () => {
    const { extents } = inspectRun(read(text), { machine: gantry })
    // independent: 20,000 points along the beads, turned into the machine frame; an arc's belly is missed by < 1 µm
    let [x0, x1] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
    for (const { path } of inventedBands.bands[0]!.beads)
      for (let i = 0; i < path.bulges.length; i++) {
        const [a, b] = [path.points[i]!, path.points[(i + 1) % path.points.length]!]
        for (let k = 0; k <= 1000; k++) {
          const [px, py] = onBulge(a, b, path.bulges[i]!, k / 1000)
          const mx = 2 + px * Math.cos(0.2) - py * Math.sin(0.2)
          ;[x0, x1] = [Math.min(x0, mx), Math.max(x1, mx)]
        }
      }
    expect(Math.abs(extents!.x[0] - x0)).toBeLessThan(1e-5)
    expect(Math.abs(extents!.x[1] - x1)).toBeLessThan(1e-5)
    expect(extents!.z).toEqual([expect.closeTo(0.16, 9), expect.closeTo(0.42, 9)])
  })
  it('says lift, layer and call in comments', () => {
    expect(text).toContain('(lift A1, layer 5)\n(call E1: electrical, box in wall W1, layers 5 to 9)\n')
  })
  it('holds after the layer it is told to, raised and with a message', () => {
    const lines = text.split('\n')
    const at = lines.indexOf('M0')
    expect(lines[at - 1]).toBe('(MSG, hold after layer 6: lintel L1, 15 min)')
    expect(lines[at - 2]).toBe('G0 Z300')
    expect(lines[at + 1]).toBe('(lift A1, layer 7)')
    expect(inspectRun(read(text)).stops.map(stop => stop.message)).toEqual([
      'hold after layer 6: lintel L1, 15 min',
    ])
  })
  it('starts the pump as often as the plan does, and after each sharp corner', () => {
    const route = layerRouteOf(file.routes, 3)
    const sharp = route.passes.flatMap((pass, i) =>
      pass.headings.slice(1, -1).filter((heading, k) => {
        const [a, b] = [pass.path.points[k]!, pass.path.points[k + 1]!]
        const chord = Math.atan2(b[1] - a[1], b[0] - a[0]) + 2 * Math.atan(pass.path.bulges[k]!) + 0.2
        return Math.abs(Math.sin((heading - chord) / 2)) > Math.sin((5 * Math.PI) / 180) && i >= 0
      }),
    ).length
    const chains = route.travels.filter(travel => !travel.joined).length
    const joints = route.travels.filter(
      travel => travel.joined && Math.abs(travel.turn) > Math.PI / 18,
    ).length
    expect(inspectRun(read(text)).layers[0]!.starts).toBe(chains + sharp + joints)
  })
  it('stops the pump its lag before the end of a bead, still at feed', () => {
    // hand: braking from 0.15 m/s at 0.5 m/s² takes 0.3 s and 22.5 mm; 0.1 s more at speed is 15 mm: together 37.5 mm
    const { steps } = read(text)
    const off = steps.findIndex(
      (step, i) =>
        step.kind === 'pump' && !step.on && steps[i + 2]?.kind === 'rapid' && steps[i + 1]?.kind === 'line',
    )
    const after = steps[off + 1]!
    expect(after.kind === 'line' && after.length).toBeCloseTo(0.0375, 6)
  })
  it('runs out within the bead that ends, not beyond', () => {
    const without = inspectRun(read(writeLift({ ...file, runOut: false })), { machine: gantry })
    expect(relative(without.length, planOf(file).length)).toBeLessThan(1e-4)
  })
  it('is the same with line numbers, to the last move', () => {
    const numbered = writeLift({ ...file, lineNumbers: true })
    expect(numbered.split('\n').every(line => line === '' || /^N\d{1,5} /.test(line))).toBe(true)
    expect(read(numbered).steps).toEqual(read(text).steps)
  })
  it('keeps foreign letters and brackets out of comments', () => {
    const odd = writeLift(inventedLift({ job: 'Haus (Süd) „Mühle“ 東' }))
    expect(odd.split('\n')[0]).toBe('(job Haus <Sud> ?Muhle? ?)')
  })
  it('numbers lines round after 99999 without a break', () => {
    const { routes } = routeSection(
      { ...inventedBands, layers: 950, bands: [{ ...inventedBands.bands[0]!, toLayer: 950 }] },
      gantry,
      file.options,
    )
    const long = writeLift(inventedLift({ routes, fromLayer: 1, toLayer: 950, lineNumbers: true, holds: [] }))
    expect(long).toContain('\nN99999 ')
    expect(readMachineFile(long).ok).toBe(true)
  }, 20_000)
})

describe('one writer for many lifts', () => {
  const { routes } = inventedLift()
  // whatever it has kept of the lift before: another part of it, another name, bead, place, machine or way to stop
  const others = inventedBands.bands.map(band => ({
    ...band,
    beads: band.beads.map(bead => ({ ...bead, id: `${bead.id}-b` })),
  }))
  const renamed = routeSection({ ...inventedBands, bands: others }, gantry, { speed: 0.15 }).routes
  const files = [
    inventedLift({ routes }),
    inventedLift({ routes, fromLayer: 8, fromPass: 1 }),
    inventedLift({ routes, lineNumbers: true }),
    inventedLift({ routes, runOut: false }),
    inventedLift({ routes: renamed, lift: 'B1' }),
    inventedLift({ routes, options: { speed: 0.15, origin: { ...inventedOrigin, turn: 0.3 } } }),
    inventedLift({ machine: inches }),
    inventedLift({ routes }),
  ]
  it('writes each as a writer of its own would', () => {
    const write = liftWriter()
    for (const file of files) expect(new TextDecoder().decode(write(file))).toBe(writeLift(file))
  })
})

describe('a restart file', () => {
  const file = inventedLift()
  it('takes up the lift at any layer and bead', () => {
    for (const layer of [3, 8, 13, 16])
      for (let pass = 0; pass < layerRouteOf(file.routes, layer).passes.length; pass++) {
        const rest = { ...file, fromLayer: layer, fromPass: pass }
        const summary = inspectRun(read(writeRestart(file, { layer, pass })), { machine: gantry })
        const plan = planOf(rest)
        expect(relative(summary.length, plan.length)).toBeLessThan(1e-4)
        expect(relative(summary.plannedTime, plan.time)).toBeLessThan(1e-3)
        expect(summary.layers.length).toBe(17 - layer)
      }
  })
  it('begins high above what stands proud', () => {
    const outline = [
      [3, 2],
      [3.1, 2],
      [3.1, 2.1],
    ] as const
    const proud = [{ name: 'bars', outline, top: 1.2 }]
    const tall = inventedLift({ options: { ...file.options, proud } })
    // hand: 1.20 m above the slab, the slab 0.10 m above the machine's zero, 0.06 m clearance
    expect(writeRestart(tall, { layer: 8, pass: 0 })).toMatch(/^G64\n\(lift A1, layer 8\)\nG0 Z1360\n/m)
  })
})

function onBulge(a: readonly [number, number], b: readonly [number, number], bulge: number, share: number) {
  if (bulge === 0) return [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])] as const
  // the rational circle through both ends: half-angle tangent t runs from 0 to the bulge's quarter angle
  const chord = Math.hypot(b[0] - a[0], b[1] - a[1])
  const angle = 4 * Math.atan(bulge)
  const radius = chord / (2 * Math.sin(angle / 2))
  const start = Math.atan2(b[1] - a[1], b[0] - a[0]) - angle / 2
  const turn = share * angle
  return [
    a[0] + radius * (Math.sin(start + turn) - Math.sin(start)),
    a[1] - radius * (Math.cos(start + turn) - Math.cos(start)),
  ] as const
}

describe('the pump words of a machine whose pump idles', () => {
  const idling = { ...gantry, pump: { ...gantry.pump, settingIdle: 15 } }
  const words = (machine: typeof gantry) =>
    [...writeLift(inventedLift({ machine })).matchAll(/ ?\bS(\d+(?:\.\d+)?)/g)].map(match => Number(match[1]))

  it('are all more by the setting at which it begins', () => {
    const [with15, without] = [words(idling), words(gantry)]
    expect(with15.length).toBe(without.length)
    // hand: S 15 more; settings are written to a tenth or a hundredth
    expect(with15.slice(1).every((setting, i) => Math.abs(setting - without[i + 1]! - 15) < 0.11)).toBe(true)
  })
  it('say so at the head of the file', () =>
    expect(writeLift(inventedLift({ machine: idling }))).toContain('S 15 and 10 for each L/min'))
  it('give back the volume planned', () => {
    const file = inventedLift({ machine: idling })
    const { volume } = inspectRun(read(writeLift(file)), { machine: idling })
    expect(relative(volume, planOf(file).volume)).toBeLessThan(1e-4)
  })
})
