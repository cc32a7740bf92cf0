import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ByteText } from './byte-text.js'

const decode = (bytes: Uint8Array) => new TextDecoder().decode(bytes)

describe('numbers of a machine file', () => {
  // independent: the shortest decimal of the language itself, which for up to 15 figures is the written one
  it('are the shortest decimals of their value, at any number of places', () =>
    fc.assert(
      fc.property(fc.integer({ min: -1e14, max: 1e14 }), fc.integer({ min: 0, max: 6 }), (steps, places) => {
        fc.pre(Math.abs(steps) < 2 ** 31 * 10 ** places)
        expect(decode(new ByteText().decimal(steps, places).taken())).toBe(String(steps / 10 ** places))
      }),
    ))
  it('have no sign on nothing, and keep the noughts before a small fraction', () => {
    const text = (steps: number) => decode(new ByteText().decimal(steps, 4).taken())
    expect([-0, 5, -50, 10000, 1234567].map(text)).toEqual(['0', '0.0005', '-0.005', '1', '123.4567'])
  })
  it.each([Number.NaN, Number.POSITIVE_INFINITY, 0.5, 3e14])('refuse %d steps', steps =>
    expect(() => new ByteText().decimal(steps, 4)).toThrow(/whole steps/),
  )
})

describe('a text of bytes', () => {
  it('grows over its room, and repeats what stands in it', () => {
    const text = new ByteText()
    const line = 'G1 X1200.5 Y80 F9000\n'
    const span = text.spanOf(() => text.words(line))
    for (let i = 1; i < 100_000; i++) text.again(span)
    expect(decode(text.taken())).toBe(line.repeat(100_000))
  })
  it('begins anew once taken, and what was taken stays', () => {
    const text = new ByteText()
    const first = text.words('G90').taken()
    expect(decode(text.words('G91').taken())).toBe('G91')
    expect(decode(first)).toBe('G90')
  })
  it('takes pieces of another, short and long', () => {
    const other = new ByteText()
    const [short, long] = ['M5\n', 'G1 X1 Y2\n'.repeat(20)].map(words =>
      other.spanOf(() => other.words(words)),
    )
    const text = new ByteText().piece(other, long!).piece(other, short!)
    expect(decode(text.taken())).toBe(`${'G1 X1 Y2\n'.repeat(20)}M5\n`)
  })
})
