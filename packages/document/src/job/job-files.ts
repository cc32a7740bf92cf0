import type { Result } from '@dawnlift/core/result'
import { failure, success } from '@dawnlift/core/result'
import { buildColumnType, buildEmbedType, buildOpeningType, buildWallType, given } from './build-types.js'
import type { DrawingMapping } from './drawing-walls.js'
import type { JobDocument } from './job-schema.js'
import { type Ledger, openLedger } from './ledger.js'
import { readDocument } from './read-document.js'

/** The files a job names, to be read before `parseJob`. All lie beside the job. */
export interface JobFiles {
  readonly drawing?: DrawingMapping
  readonly weatherFile?: string
  readonly forecastFile?: string
  readonly testsFile?: string
  readonly trialsFile?: string
}

/** What has to be fetched for a job, and how its drawing is to be read. */
export function readJobFiles(text: string, fileName = 'job.yaml'): Result<JobFiles> {
  const read = readDocument(text, fileName)
  if (!read.ok) return read
  const { document, source } = read.value
  const ledger = openLedger(document.units, source.place)
  const drawing = buildMapping(document, ledger)
  if (ledger.problems.length > 0) return failure(ledger.problems)
  const files = {
    drawing,
    weatherFile: document.weather.file,
    forecastFile: document.weather.forecast,
    testsFile: document.mix === 'default' ? undefined : document.mix.tests,
    trialsFile: document.machine.trials,
  }
  return success(given(files))
}

function buildMapping(document: JobDocument, ledger: Ledger): DrawingMapping | undefined {
  const { drawing } = document
  if (!drawing) return undefined
  const used = usedTypes(document)
  const built = <P, T>(
    list: string,
    types: Readonly<Record<string, P>>,
    build: (parts: P, path: readonly string[]) => T | undefined,
  ) =>
    Object.fromEntries(
      Object.entries(types).flatMap(([name, parts]) => {
        if (list === 'wallTypes' && !used.has(name)) return []
        const type = build(parts, [list, name])
        return type ? [[name, type] as const] : []
      }),
    )
  return {
    file: drawing.file,
    origin: drawing.origin ?? [0, 0],
    joinWithin: drawing.joinWithin,
    curveWithin: drawing.curveWithin,
    ...given({ unit: drawing.unit }),
    layers: Object.fromEntries(
      Object.entries(drawing.layers).map(([name, use]) => [
        name,
        { is: use.is, ...given({ type: use.type }) },
      ]),
    ),
    wallTypes: built('wallTypes', document.wallTypes, (parts, path) =>
      buildWallType(parts, path, document.print.beadWidth, ledger),
    ),
    openingTypes: built('openingTypes', document.openingTypes, (parts, path) =>
      buildOpeningType(parts, path, ledger),
    ),
    embedTypes: built('embedTypes', document.embedTypes, (parts, path) =>
      buildEmbedType(parts, path, ledger),
    ),
    columnTypes: built('columnTypes', document.columnTypes, (parts, path) =>
      buildColumnType(parts, path, ledger),
    ),
  }
}

/** Wall types that only serve inline walls may be incomplete: the wall fills them in. */
const usedTypes = (document: JobDocument): ReadonlySet<string | undefined> =>
  new Set(Object.values(document.drawing?.layers ?? {}).map(use => use.type))
