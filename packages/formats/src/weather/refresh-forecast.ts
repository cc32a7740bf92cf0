import { failure, type Result } from '@dawnlift/core/result'
import { type Fetch, type Forecast, loadForecast, type StoredForecast } from './forecast-service.js'

/** The folder of a job, as far as a forecast needs it. */
export interface ForecastFolder {
  /** Content of a file; undefined where there is none. */
  readonly read: (name: string) => Promise<string | undefined>
  readonly write: (name: string, content: string) => Promise<void>
  /** Takes the place of what was there in one step. */
  readonly rename: (from: string, to: string) => Promise<void>
}

export interface ForecastRefresh {
  readonly site: { readonly latitude: number; readonly longitude: number; readonly elevation: number }
  /** The file the job names as its forecast. */
  readonly file: string
  readonly folder: ForecastFolder
  readonly now: number
  /** Absent: nobody is asked, what is kept is read. */
  readonly fetch?: Fetch
  readonly service?: string
  readonly freshFor?: number
  readonly days?: number
}

/**
 * Brings the forecast beside a job up to date. The new answer is written aside and renamed, so that a plan made
 * meanwhile reads the old one or the new one whole.
 */
export async function refreshForecast(request: ForecastRefresh): Promise<Result<Forecast>> {
  const { site, file, folder, now, fetch, service, freshFor, days } = request
  const aside = `${file}.new`
  const store = {
    read: async () => storedForecast(await folder.read(file)),
    write: async (stored: StoredForecast) => {
      await folder.write(aside, JSON.stringify(stored))
      await folder.rename(aside, file)
    },
  }
  try {
    return await loadForecast({
      site,
      now,
      store,
      ...(fetch === undefined ? {} : { fetch }),
      ...(service === undefined ? {} : { service }),
      ...(freshFor === undefined ? {} : { freshFor }),
      ...(days === undefined ? {} : { days }),
    })
  } catch (reason) {
    // A full disk or a folder that may not be written: the old answer is still there.
    const why = reason instanceof Error ? reason.message : String(reason)
    return failure([
      { code: 'forecast/not-kept', at: file, say: `The forecast could not be kept in ${file}: ${why}.` },
    ])
  }
}

/** What a file of ours holds; undefined for anything else, which is then fetched anew. */
export function storedForecast(text: string | undefined): StoredForecast | undefined {
  const value = text === undefined ? undefined : parsed(text)
  if (typeof value !== 'object' || value === null) return undefined
  if (!('url' in value && 'fetchedAt' in value && 'answer' in value)) return undefined
  const { url, fetchedAt, answer } = value
  return typeof url === 'string' && typeof fetchedAt === 'number' && Number.isFinite(fetchedAt)
    ? { url, fetchedAt, answer }
    : undefined
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}
