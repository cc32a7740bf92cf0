import { failure, type Result, success } from '@dawnlift/core/result'
import { editJob, type JobEdit, rawJob } from '@dawnlift/document/job'
import { readUnit, readWeather, type WeatherQuantity } from '@dawnlift/formats/weather'

/** What a weather file dropped on the site changes in the document. */
export interface WeatherDrop {
  readonly document: string
  /** What to say of the file: where from, how many hours. */
  readonly says: string
}

/**
 * A file of hours instead of whatever weather the job had; the source of the old figures goes with them.
 * A table needs its columns named: they are guessed from the usual headings, and asked for where that fails.
 */
export function weatherDropped(document: string, name: string, content: string): Result<WeatherDrop> {
  const format = formatOf(content)
  const columns = format === 'csv' ? columnsOf(content) : undefined
  if (columns && !columns.ok) return columns
  const read = format === 'csv' ? undefined : readWeather(content, name)
  if (read && !read.ok) return read
  const raw = rawJob(document)
  const old = raw.ok && typeof raw.value.weather === 'object' ? (raw.value.weather as object) : {}
  const forecast = 'forecast' in old ? { forecast: (old as { forecast: unknown }).forecast } : {}
  const edits: readonly JobEdit[] = [
    {
      kind: 'set',
      path: ['weather'],
      value: {
        file: name,
        format,
        ...(columns ? { columns: columns.value } : {}),
        ...forecast,
      },
    },
  ]
  const edited = editJob(document, edits)
  if (!edited.ok) return edited
  const says = read?.ok
    ? `${read.value.station.name}: ${read.value.hours.length.toLocaleString('en-GB')} hours`
    : `${name}: a table of hours`
  return success({ document: edited.value, says })
}

/** EPW and TMY3 say on their first lines what they are; anything else is taken for a table. */
function formatOf(content: string): 'epw' | 'tmy3' | 'csv' {
  const [first = '', second = ''] = content
    .replace(/^\uFEFF/, '')
    .slice(0, 4000)
    .split(/\r\n|\n|\r/)
  if (/^LOCATION,/i.test(first)) return 'epw'
  return second.startsWith('Date (MM/DD/YYYY)') ? 'tmy3' : 'csv'
}

/** Heading → reading, by the words people use; the unit stands in the heading. */
const readings: readonly (readonly [reading: WeatherQuantity, heading: RegExp])[] = [
  ['air', /^(air|temp|t[_ ]?(air|2m)?\b|dry.?bulb)/i],
  ['humidity', /^(rel.*hum|humid|rh)/i],
  ['dewPoint', /^dew/i],
  ['wind', /^wind(?!.*(gust|dir))/i],
  ['gust', /gust/i],
  ['rain', /^(rain|precip)/i],
  ['global', /^(global|ghi|solar|radiation)/i],
  ['pressure', /^press/i],
]

/** `air: "Temp °C"`, from headings like `Temp (°C)` or `temp_C`. */
export function columnsOf(content: string): Result<Readonly<Record<string, string>>> {
  const line = content.replace(/^\uFEFF/, '').split(/\r?\n/, 1)[0] ?? ''
  const heads = line.split(/[;,\t]/).map(head => head.replace(/^"|"$/g, '').trim())
  const time = heads.find(head => /^(time|date|stamp|hour)/i.test(head))
  const found: Record<string, string> = {}
  for (const [reading, heading] of readings) {
    const head = heads.find(each => heading.test(each))
    const said = head && /[([]\s*([^)\]]+?)\s*[)\]]|[_ ](°?[A-Za-z%/²]+)$/.exec(head)
    const unit = said ? (said[1] ?? said[2]) : undefined
    if (head) found[reading] = `${head} ${unit && readUnit(reading, unit) ? unit : usualUnit[reading]}`
  }
  if (!time || !found.air)
    return failure([
      {
        code: 'weather/columns',
        at: line.slice(0, 80),
        say: `The table’s first line must name its columns, at least one with the time and one with the air temperature, like “time, air (°C), humidity (%), wind (km/h)”. Found: ${heads.slice(0, 8).join(', ') || 'nothing'}.`,
      },
    ])
  return success({ time, ...found })
}

const usualUnit: Readonly<Partial<Record<WeatherQuantity, string>>> = {
  air: '°C',
  humidity: '%',
  dewPoint: '°C',
  wind: 'm/s',
  gust: 'm/s',
  rain: 'mm',
  global: 'W/m²',
  pressure: 'Pa',
}
