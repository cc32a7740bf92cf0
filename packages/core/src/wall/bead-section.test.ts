import { describe, expect, it } from 'vitest'
import { beadArea, beadContact, beadPerimeter, fillPitch, solidFill, widthForPitch } from './bead-section.js'
import { formulas } from './formulas.js'

describe('beadArea', () => {
  // closed form: h(w − h) + πh²/4, worked by hand to the digits shown.
  it.each([
    [50, 15, 701.715],
    [60, 20, 1114.159],
    [40, 10, 378.54],
    [30, 30, 706.858],
  ])('of a %d × %d mm bead is %d mm²', (width, height, mm2) =>
    expect(beadArea(width / 1000, height / 1000) * 1e6).toBeCloseTo(mm2, 3),
  )
  it('of a 50 × 15 mm bead is 0.9356 of the rectangle it squashes towards', () =>
    expect(beadArea(0.05, 0.015) / (0.05 * 0.015)).toBeCloseTo(0.9356, 4))
  it('of a bead as high as wide is a circle', () =>
    expect(beadArea(0.03, 0.03)).toBeCloseTo(Math.PI * 0.015 ** 2, 12))
  // independent: the section summed in 20 000 slices of its height.
  it('agrees with a sum of slices', () => {
    const [w, h, n] = [0.05, 0.015, 20_000]
    let area = 0
    for (let k = 0; k < n; k++) {
      const y = ((k + 0.5) / n - 0.5) * h
      area += (w - h + 2 * Math.sqrt((h / 2) ** 2 - y ** 2)) * (h / n)
    }
    expect(beadArea(w, h)).toBeCloseTo(area, 9)
  })
})

describe('beadContact and beadPerimeter', () => {
  // hand: w − h, and 2(w − h) + π h.
  it.each([
    [50, 15, 35, 117.124],
    [60, 20, 40, 142.832],
    [30, 30, 0, 94.248],
  ])('of a %d × %d mm bead are %d and %d mm', (width, height, contact, perimeter) => {
    expect(beadContact(width / 1000, height / 1000) * 1000).toBeCloseTo(contact, 9)
    expect(beadPerimeter(width / 1000, height / 1000) * 1000).toBeCloseTo(perimeter, 3)
  })
  it('agree with the outline walked in 20 000 steps', () => {
    // independent: chords of the two half circles, and the flats between; chords fall short by 1e-8 of the arc.
    const [w, h, n] = [0.05, 0.015, 20_000]
    const half = (k: number) =>
      [
        (w - h) / 2 + (h / 2) * Math.cos((k / n - 0.5) * Math.PI),
        (h / 2) * Math.sin((k / n - 0.5) * Math.PI),
      ] as const
    let side = 0
    for (let k = 0; k < n; k++) side += Math.hypot(half(k + 1)[0] - half(k)[0], half(k + 1)[1] - half(k)[1])
    expect(beadPerimeter(w, h)).toBeCloseTo(2 * side + 2 * 2 * half(0)[0], 8)
    expect(beadContact(w, h)).toBeCloseTo(2 * half(0)[0], 12)
  })
})

describe('fillPitch', () => {
  // closed form: 50 − 15(1 − π/4).
  it('of a 50 × 15 mm bead is 46.781 mm', () => expect(fillPitch(0.05, 0.015) * 1000).toBeCloseTo(46.781, 3))
  it('times the height is the area of the bead', () =>
    expect(fillPitch(0.06, 0.02) * 0.02).toBeCloseTo(beadArea(0.06, 0.02), 12))
  it('is undone by widthForPitch', () =>
    expect(widthForPitch(fillPitch(0.04, 0.01), 0.01)).toBeCloseTo(0.04, 12))
})

describe('solidFill', () => {
  it.each([0.05, 0.1, 0.15, 0.2, 0.31])('fills %d m from face to face', thickness => {
    const { count, pitch, width } = solidFill(thickness, 0.05, 0.02)
    expect(width + (count - 1) * pitch).toBeCloseTo(thickness, 12)
    expect(width).toBeLessThanOrEqual(0.05 + 1e-9)
    expect(count === 1 || count % 2 === 0).toBe(true)
  })
})

describe('the formulas shown to people', () => {
  const shown = (name: string, inputs: Record<string, number>) =>
    formulas.find(f => f.name === name)!.calculate(inputs)
  // hand: 701.715 mm² × 150 mm/s × 6e-5 = 6.3154 L/min.
  it('give the flow in litres per minute', () =>
    expect(shown('bead-flow', { width: 50, height: 15, speed: 150 })).toBeCloseTo(6.3154, 4))
  it('give lengths in millimetres', () => {
    expect(shown('bead-contact', { width: 50, height: 15 })).toBeCloseTo(beadContact(0.05, 0.015) * 1000, 9)
    expect(shown('bead-perimeter', { width: 50, height: 15 })).toBeCloseTo(
      beadPerimeter(0.05, 0.015) * 1000,
      9,
    )
  })
})
