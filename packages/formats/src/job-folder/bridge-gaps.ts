import type { Problem } from '@dawnlift/core/result'
import type { WeatherHour } from '@dawnlift/core/weather'
import type { WeatherFile } from '../weather/index.js'

/** Missing hours in a row that are still taken from the hour before: a logger's restart, or the hour autumn shows twice. */
const longestBridge = 3

/** A record without its short gaps, and a word about them among its warnings. Without this one lost hour would cost its year. */
export function bridgeGaps(file: WeatherFile, name: string): WeatherFile {
  const hours = [...file.hours].sort((a, b) => a.start - b.start)
  const whole = hours.flatMap((hour, index) => [hour, ...bridge(hour, hours[index + 1])])
  const filled = whole.length - hours.length
  return filled === 0 ? file : { ...file, hours: whole, warnings: [...file.warnings, note(name, filled)] }
}

/**
 * A record with as many hours before its first and behind its last, so that a year cut an hour late or early still closes
 * on itself at new year.
 */
export function closedOnItself(hours: readonly WeatherHour[]): readonly WeatherHour[] {
  const [first, last] = [hours[0], hours.at(-1)]
  if (!first || !last) return hours
  const steps = Array.from({ length: longestBridge }, (_, index) => (index + 1) * 3600)
  const before = steps.map(step => ({ ...first, start: first.start - step, rain: 0 })).reverse()
  return [...before, ...hours, ...steps.map(step => ({ ...last, start: last.start + step, rain: 0 }))]
}

function bridge(hour: WeatherHour, next: WeatherHour | undefined): readonly WeatherHour[] {
  const missing = next ? Math.round((next.start - hour.start) / 3600) - 1 : 0
  if (missing < 1 || missing > longestBridge) return []
  return Array.from({ length: missing }, (_, index) => ({
    ...hour,
    start: hour.start + (index + 1) * 3600,
    rain: 0,
  }))
}

const note = (name: string, filled: number): Problem => ({
  code: 'weather/bridged',
  at: name,
  say: `${filled} missing hours, at most ${longestBridge} in a row, take the values of the hour before, without rain.`,
})
