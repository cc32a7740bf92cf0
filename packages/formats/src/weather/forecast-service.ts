import { failure, type Result, success } from '@dawnlift/core/result'
import { type ForecastHours, forecastFields, readForecast } from './forecast.js'

/** A free public service of hourly forecasts that needs no key. Another of the same shape can be named in its place. */
export const forecastService = 'https://api.open-meteo.com/v1/forecast'

/** What we need of a `fetch`. */
export type Fetch = (
  url: string,
) => Promise<{ readonly ok: boolean; readonly status: number; readonly json: () => Promise<unknown> }>

/** One answer, kept as it came, with when. */
export interface StoredForecast {
  readonly url: string
  readonly fetchedAt: number
  readonly answer: unknown
}

/** Where answers are kept between runs. */
export interface ForecastStore {
  readonly read: () => Promise<StoredForecast | undefined>
  readonly write: (stored: StoredForecast) => Promise<void>
}

/** A forecast with its age. */
export interface Forecast extends ForecastHours {
  readonly from: 'service' | 'store'
  readonly fetchedAt: number
  readonly ageSeconds: number
  /** `Forecast from 3 h ago; the service could not be reached (503).` */
  readonly say: string
}

export interface ForecastRequest {
  readonly site: { readonly latitude: number; readonly longitude: number; readonly elevation: number }
  readonly now: number
  readonly store: ForecastStore
  /** Absent: offline, only the store is asked. */
  readonly fetch?: Fetch
  readonly service?: string
  /** A stored answer younger than this is not asked for again [s]. */
  readonly freshFor?: number
  readonly days?: number
}

/** Where to ask: the site to four decimals (11 m), SI units, UTC seconds. */
export function forecastUrl({
  site,
  service = forecastService,
  days = 10,
}: Pick<ForecastRequest, 'site' | 'service' | 'days'>): string {
  const url = new URL(service)
  url.searchParams.set('latitude', site.latitude.toFixed(4))
  url.searchParams.set('longitude', site.longitude.toFixed(4))
  url.searchParams.set('elevation', site.elevation.toFixed(0))
  url.searchParams.set('hourly', Object.values(forecastFields).join(','))
  url.searchParams.set('wind_speed_unit', 'ms')
  url.searchParams.set('timeformat', 'unixtime')
  url.searchParams.set('timezone', 'UTC')
  url.searchParams.set('forecast_days', String(days))
  return url.href
}

/** Whether an answer was asked for this site, to the same four decimals; service and days may differ. */
export function isForecastOf(url: string, site: ForecastRequest['site']): boolean {
  if (!URL.canParse(url)) return false
  const [asked, wanted] = [new URL(url), new URL(forecastUrl({ site }))]
  return ['latitude', 'longitude'].every(
    name => asked.searchParams.get(name) === wanted.searchParams.get(name),
  )
}

/**
 * The forecast, from the store while it is fresh, else from the service, else from the store with its age said. Offline it is the
 * store alone. Never older weather passed off as new: `say` goes beside every use.
 */
export async function loadForecast(request: ForecastRequest): Promise<Result<Forecast>> {
  const url = forecastUrl(request)
  const kept = await request.store.read()
  const stored = kept && isForecastOf(kept.url, request.site) ? kept : undefined
  // Another service, or more days, is asked at once.
  const fresh = stored?.url === url && request.now - stored.fetchedAt < (request.freshFor ?? 3600)
  if (!request.fetch || fresh) return fromStore(stored, request, fresh ? '' : 'working offline')
  const asked = await ask(request.fetch, url)
  if (!asked.ok) return fromStore(stored, request, asked.why)
  const read = readForecast(asked.answer, request.site)
  // A broken answer does not overwrite a good one.
  if (!read.ok) return stored ? fromStore(stored, request, read.problems[0]!.say) : read
  await request.store.write({ url, fetchedAt: request.now, answer: asked.answer })
  return success({
    ...read.value,
    from: 'service',
    fetchedAt: request.now,
    ageSeconds: 0,
    say: 'Forecast fetched just now.',
  })
}

type Asked = { readonly ok: true; readonly answer: unknown } | { readonly ok: false; readonly why: string }

async function ask(fetch: Fetch, url: string): Promise<Asked> {
  try {
    const response = await fetch(url)
    if (!response.ok) return { ok: false, why: `the service answered ${response.status}` }
    return { ok: true, answer: await response.json() }
  } catch (reason) {
    // No network, no name, a cut connection, half a document: all mean the same to a site.
    return {
      ok: false,
      why: `the service could not be reached (${reason instanceof Error ? reason.message : String(reason)})`,
    }
  }
}

function fromStore(
  stored: StoredForecast | undefined,
  request: ForecastRequest,
  why: string,
): Result<Forecast> {
  if (!stored)
    return failure([
      {
        code: 'forecast/none',
        at: 'forecast',
        say: `There is no forecast: ${why}, and none is stored for this site. Planning goes on with history or climate normals.`,
      },
    ])
  const read = readForecast(stored.answer, request.site)
  if (!read.ok) return read
  const ageSeconds = request.now - stored.fetchedAt
  const say = `Forecast from ${ageText(ageSeconds)} ago${why ? `; ${why}` : ''}.`
  return success({ ...read.value, from: 'store', fetchedAt: stored.fetchedAt, ageSeconds, say })
}

const ageText = (seconds: number): string =>
  seconds < 5400
    ? `${Math.round(seconds / 60)} min`
    : seconds < 172_800
      ? `${Math.round(seconds / 3600)} h`
      : `${Math.round(seconds / 86400)} days`
