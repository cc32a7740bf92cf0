import { describe, expect, it } from 'vitest'
import {
  type CellWall,
  cavityWall,
  conductionStep,
  type FaceLaw,
  faceFlux,
  faceTemperature,
  slabOf,
  stepRoom,
} from './index.js'

const k = 1.5
const c = 2.4e6
const diffusivity = k / c

/** A face held at a temperature: a film so good that nothing else counts. */
const held = (temperature: number): FaceLaw => ({ gain: 1e9 * temperature, loss: 1e9 })
const closed: FaceLaw = { gain: 0, loss: 0 }

interface Run {
  readonly wall: CellWall
  readonly start: (cell: number) => number
  readonly step: number
  readonly steps: number
  readonly theta: number
  readonly left: (at: number) => FaceLaw
  readonly right: (at: number) => FaceLaw
  readonly heat?: number
}

function march({ wall, start, step, steps, theta, left, right, heat = 0 }: Run): Float64Array {
  const cells = wall.capacities.length
  const temperatures = Float64Array.from({ length: cells }, (_, cell) => start(cell))
  const generated = new Float64Array(cells).fill(heat)
  const room = stepRoom(cells)
  let flux = [
    faceFlux(left(0), wall.leftHalf, temperatures[0]!),
    faceFlux(right(0), wall.rightHalf, temperatures[cells - 1]!),
  ]
  for (let index = 1; index <= steps; index += 1) {
    const [onLeft, onRight] = [left(index * step), right(index * step)]
    conductionStep(wall, temperatures, generated, step, [onLeft, flux[0]!], [onRight, flux[1]!], theta, room)
    flux = [
      faceFlux(onLeft, wall.leftHalf, temperatures[0]!),
      faceFlux(onRight, wall.rightHalf, temperatures[cells - 1]!),
    ]
  }
  return temperatures
}

/** Abramowitz and Stegun 7.1.26: 1.5e-7. */
function erf(x: number): number {
  const t = 1 / (1 + 0.3275911 * x)
  return (
    1 -
    t *
      (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429)))) *
      Math.exp(-x * x)
  )
}

/** Largest error of a decaying sine between faces held at zero after an hour, with so many cells and steps. */
function sineError(cells: number, steps: number, theta: number): number {
  const thickness = 0.1
  const middle = (cell: number) => ((cell + 0.5) / cells) * Math.PI
  const found = march({
    wall: slabOf(thickness, cells, k, c),
    start: cell => 30 * Math.sin(middle(cell)),
    step: 3600 / steps,
    steps,
    theta,
    left: () => held(0),
    right: () => held(0),
  })
  // closed form: T = 30 sin(πx/L) exp(−a(π/L)²t).
  const decay = Math.exp(-diffusivity * (Math.PI / thickness) ** 2 * 3600)
  return Math.max(...found.map((value, cell) => Math.abs(value - 30 * Math.sin(middle(cell)) * decay)))
}

const order = (coarse: number, fine: number) => Math.log2(coarse / fine)

describe('conductionStep', () => {
  it('is of second order when half implicit', () => {
    expect(order(sineError(8, 8, 0.5), sineError(16, 16, 0.5))).toBeGreaterThan(1.85)
    expect(order(sineError(16, 16, 0.5), sineError(32, 32, 0.5))).toBeGreaterThan(1.9)
  })
  it('is of first order in time when wholly implicit', () => {
    const [coarse, fine] = [sineError(160, 20, 1), sineError(160, 40, 1)]
    expect(order(coarse, fine)).toBeGreaterThan(0.9)
    expect(order(coarse, fine)).toBeLessThan(1.2)
  })

  it('warms a deep body from its face as the error function says', () => {
    const cells = 200
    const found = march({
      wall: slabOf(1, cells, k, c),
      start: () => 10,
      step: 60,
      steps: 120,
      theta: 0.5,
      left: () => held(40),
      right: () => held(10),
    })
    for (let cell = 0; cell < 60; cell += 1) {
      const x = (cell + 0.5) / cells
      const wanted = 40 - 30 * erf(x / (2 * Math.sqrt(diffusivity * 7200)))
      // closed form (semi-infinite body); 0.05 K of 30 K is the mesh of 5 mm against a front of 130 mm, by the observed order.
      expect(Math.abs(found[cell]! - wanted)).toBeLessThan(0.05)
    }
  })

  it('lets the day’s wave in, weaker and later with depth', () => {
    const day = 86400
    const depth = Math.sqrt((2 * diffusivity) / ((2 * Math.PI) / day))
    const cells = 240
    const thickness = 1.5
    const steps = 288 * 12
    const found = march({
      wall: slabOf(thickness, cells, k, c),
      start: () => 0,
      step: 300,
      steps,
      theta: 0.5,
      left: at => held(10 * Math.cos((2 * Math.PI * at) / day)),
      right: () => held(0),
    })
    for (let cell = 0; cell < 80; cell += 1) {
      const x = (cell + 0.5) * (thickness / cells)
      // closed form (periodic, semi-infinite), at a whole number of days; 0.05 K of 10 K for what is left of the start and the far face.
      expect(Math.abs(found[cell]! - 10 * Math.exp(-x / depth) * Math.cos(x / depth))).toBeLessThan(0.05)
    }
  })

  it('bows a slab that makes heat into a parabola', () => {
    const cells = 20
    const thickness = 0.2
    const power = 2000
    const found = march({
      wall: slabOf(thickness, cells, k, c),
      start: () => 20,
      step: 600,
      steps: 600,
      theta: 1,
      left: () => held(20),
      right: () => held(20),
      heat: power * (thickness / cells),
    })
    found.forEach((value, cell) => {
      const x = (cell + 0.5) * (thickness / cells)
      const wanted = 20 + (power / (2 * k)) * x * (thickness - x)
      // closed form; the cell at the face is off by q dx²/(8k) = 0.017 K, no more anywhere.
      expect(Math.abs(value - wanted)).toBeLessThan(0.018)
    })
  })

  it('cools a thin plate in air by one exponential', () => {
    const film = 10
    const found = march({
      wall: slabOf(0.005, 4, k, c),
      start: () => 50,
      step: 10,
      steps: 180,
      theta: 0.5,
      left: () => ({ gain: film * 20, loss: film }),
      right: () => ({ gain: film * 20, loss: film }),
    })
    // closed form (lumped): Biot number 0.017 leaves half a per cent of the difference.
    const wanted = 20 + 30 * Math.exp((-2 * film * 1800) / (c * 0.005))
    for (const value of found) expect(Math.abs(value - wanted)).toBeLessThan(0.006 * 30)
  })

  it('carries the heat that all its resistances in a row let through, cavity included', () => {
    const wall = cavityWall(slabOf(0.05, 5, k, c), 6)
    const film: FaceLaw = { gain: 8 * 30, loss: 8 }
    const cold: FaceLaw = { gain: 20 * 5, loss: 20 }
    const found = march({
      wall,
      start: () => 15,
      step: 900,
      steps: 800,
      theta: 1,
      left: () => film,
      right: () => cold,
    })
    // closed form: 25 K over 1/8 + 0.05/1.5 + 1/6 + 0.05/1.5 + 1/20.
    const wanted = 25 / (1 / 8 + 0.05 / k + 1 / 6 + 0.05 / k + 1 / 20)
    expect(faceFlux(film, wall.leftHalf, found[0]!)).toBeCloseTo(wanted, 6)
    expect(-faceFlux(cold, wall.rightHalf, found.at(-1)!)).toBeCloseTo(wanted, 6)
    expect(faceTemperature(film, wall.leftHalf, found[0]!)).toBeCloseTo(30 - wanted / 8, 6)
  })

  it.each([0.5, 1])('keeps every joule between closed faces, theta %d', theta => {
    const wall = slabOf(0.1, 10, k, c)
    const found = march({
      wall,
      start: cell => cell * 3,
      step: 300,
      steps: 50,
      theta,
      left: () => closed,
      right: () => closed,
      heat: 7,
    })
    const stored = found.reduce((sum, value, cell) => sum + wall.capacities[cell]! * (value - cell * 3), 0)
    // closed form: 10 cells · 7 W/m² · 15,000 s.
    expect(stored / (10 * 7 * 15000)).toBeCloseTo(1, 10)
  })
})
