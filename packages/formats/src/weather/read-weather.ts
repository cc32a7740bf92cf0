import { failure, type Result } from '@dawnlift/core/result'
import { readEpw } from './epw.js'
import { readTmy3 } from './tmy3.js'
import type { WeatherFile } from './weather-file.js'

/** Reads a weather file whose format its own first lines tell: EPW or TMY3. Other tables need a mapping (`readHourlyCsv`). */
export function readWeather(text: string, name: string): Result<WeatherFile> {
  const [first = '', second = ''] = text
    .replace(/^\uFEFF/, '')
    .slice(0, 4000)
    .split(/\r\n|\n|\r/)
  if (/^LOCATION,/i.test(first)) return readEpw(text, name)
  if (second.startsWith('Date (MM/DD/YYYY)')) return readTmy3(text, name)
  return failure([
    {
      code: 'weather/unknown-format',
      at: `${name}:1`,
      say: `“${first.slice(0, 60)}” begins neither an EPW file (LOCATION,…) nor a TMY3 file. For another hourly table say which column is what, in which unit.`,
    },
  ])
}
