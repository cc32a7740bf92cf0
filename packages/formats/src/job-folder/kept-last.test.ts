import { describe, expect, it } from 'vitest'
import { keptLast } from './kept-last.js'

const bytes = (text: string) => new TextEncoder().encode(text)

describe('an answer that is kept while what it rests on stays', () => {
  it('is made once for the same words and content, whatever objects they come in', () => {
    const kept = keptLast<object>()
    const first = kept({ text: 'plan.dxf', content: bytes('LINE') }, () => ({}))
    expect(kept({ text: 'plan.dxf', content: bytes('LINE') }, () => ({}))).toBe(first)
  })
  it('is made anew when a word or a byte is another, or the file has gone', () => {
    const kept = keptLast<number>()
    let made = 0
    const ask = (text: string, content?: Uint8Array) => kept({ text, content }, () => ++made)
    ask('plan.dxf', bytes('LINE'))
    for (const [text, content] of [
      ['other.dxf', bytes('LINE')],
      ['other.dxf', bytes('LINK')],
      ['other.dxf', bytes('LINKS')],
      ['other.dxf', undefined],
    ] as const)
      ask(text, content)
    expect(made).toBe(5)
  })
})
