import { describe, expect, it } from 'vitest'
import { agreementOn, keepConfirmed, readConfirmed, withAgreement } from './confirmed.js'

const call = { id: 'E3', from: 1_783_310_400 }
const agreed = withAgreement({}, call, true)

describe('a call a trade has said yes to', () => {
  it('is confirmed as long as it stays within a quarter of an hour', () => {
    expect(agreementOn(call, agreed)).toBe('confirmed')
    expect(agreementOn({ ...call, from: call.from + 900 }, agreed)).toBe('confirmed')
  })
  it('has moved when a new plan puts it elsewhere in the day', () =>
    expect(agreementOn({ ...call, from: call.from + 901 }, agreed)).toBe('moved'))
  it('is open again when the word is taken back', () =>
    expect(agreementOn(call, withAgreement(agreed, call, false))).toBe('open'))
  it('is still confirmed after the page has been closed', () => {
    const shelf = new Map<string, string>()
    const storage = {
      getItem: (name: string) => shelf.get(name) ?? null,
      setItem: (name: string, value: string) => void shelf.set(name, value),
    }
    keepConfirmed('Shed', agreed, storage)
    expect(readConfirmed('Shed', storage)).toEqual(agreed)
    expect(readConfirmed('Barn', storage)).toEqual({})
  })
  it('is nothing where the shelf holds rubbish', () =>
    expect(readConfirmed('Shed', { getItem: () => '{"E3":"soon"' })).toEqual({}))
})
