import { describe, expect, it } from 'vitest'
import { rungeKutta } from './runge-kutta.js'

const swing = {
  slope: (_: number, [y, v]: readonly number[]) => [v!, -y!],
  start: [1, 0],
  from: 0,
  to: Math.PI,
}

describe('rungeKutta', () => {
  it('carries a swing through half a turn', () => {
    // closed form: cos π = −1, −sin π = 0
    const [y, v] = rungeKutta(swing, 200)
    expect(y).toBeCloseTo(-1, 8)
    expect(v).toBeCloseTo(0, 8)
  })

  it('gains a factor of sixteen when the step is halved (fourth order)', () => {
    const grow = {
      slope: (x: number, [y]: readonly number[]) => [y! * Math.cos(x)],
      start: [1],
      from: 0,
      to: 2,
    }
    const exact = Math.exp(Math.sin(2))
    const errorOf = (steps: number) => Math.abs(rungeKutta(grow, steps)[0]! - exact)
    expect(Math.log2(errorOf(40) / errorOf(80))).toBeCloseTo(4, 0)
  })

  it('a visitor stops the march', () => {
    let last = 0
    rungeKutta(swing, 314, (x, [y]) => {
      last = x
      return y! < 0
    })
    expect(last).toBeCloseTo(Math.PI / 2, 1)
  })
})
