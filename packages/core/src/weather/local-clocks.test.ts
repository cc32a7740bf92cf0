import { describe, expect, it } from 'vitest'
import { localTime } from '../clock/index.js'
import { localClocks } from './index.js'

describe('localClocks', () => {
  it.each([
    'Europe/Madrid',
    'Asia/Kolkata',
    'Australia/Lord_Howe',
    'America/St_Johns',
    'Africa/Casablanca',
    'Pacific/Apia',
  ])('agrees with asking the zone for every hour of a year: %s', zone => {
    const hours = Array.from({ length: 8784 }, (_, index) => ({
      start: Date.UTC(2024, 0, 1) / 1000 + index * 3600,
    }))
    // independent: the runtime's own zone rules, asked hour by hour.
    expect([...localClocks(hours, zone)]).toEqual(hours.map(({ start }) => localTime(start, zone).clock))
  })
})
