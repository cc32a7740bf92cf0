import { localTime } from '@dawnlift/core/clock'

/**
 * A moment that can be written in a named zone whatever zone the machine is in, in the shape the calendar writer takes
 * (it would write a plain Date in the machine's own zone).
 */
export class ZonedMoment {
  readonly isValid = true
  readonly zone = { type: 'iana' }
  constructor(
    private readonly at: number,
    private readonly name = 'UTC',
  ) {}

  setZone(zone = 'UTC'): ZonedMoment {
    return new ZonedMoment(this.at, zone === 'utc' ? 'UTC' : zone)
  }

  toFormat(pattern: string): string {
    const { date, clock } = localTime(Math.round(this.at), this.name)
    if (pattern === 'yyyyLLdd') return date.replaceAll('-', '')
    const parts = [Math.floor(clock / 3600), Math.floor(clock / 60) % 60, clock % 60]
    return parts.map(part => String(part).padStart(2, '0')).join('')
  }

  toJSDate(): Date {
    return new Date(Math.round(this.at) * 1000)
  }

  toJSON(): string {
    return this.toJSDate().toISOString()
  }
}
