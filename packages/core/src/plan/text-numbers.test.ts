import { describe, expect, it } from 'vitest'
import { newTextNumbers } from './text-numbers.js'

describe('numbers of texts', () => {
  it('are the same for the same text and for objects that say it', () => {
    const numbers = newTextNumbers()
    const first = numbers.of('12 °C')
    expect(numbers.of('13 °C')).not.toBe(first)
    expect(numbers.said({ air: 12 }, ({ air }) => `${air} °C`)).toBe(first)
  })
  it('ask an object once what it says', () => {
    const numbers = newTextNumbers()
    let asked = 0
    const hour = {}
    const say = () => `${++asked}`
    expect(numbers.said(hour, say)).toBe(numbers.said(hour, say))
    expect(asked).toBe(1)
  })
  it('are never given twice, even once texts are forgotten', () => {
    const numbers = newTextNumbers(2)
    const given = ['a', 'b', 'c', 'd', 'a'].map(numbers.of)
    expect(new Set(given).size).toBe(5)
  })
})
