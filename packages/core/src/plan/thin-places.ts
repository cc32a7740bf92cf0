import type { Job } from '../job/index.js'
import type { Finding } from '../result/index.js'
import { type SectionBands, sayThinPlace } from '../wall/index.js'

/** Where the beads do not cover the wall, or two would not fit: one finding a place and band. */
export function thinPlaces(job: Job, bands: readonly SectionBands[]): readonly Finding[] {
  return bands.flatMap(({ section, bands: each }) =>
    each.flatMap(band =>
      band.thinPlaces.map(
        (thin): Finding => ({
          check: 'thin-place',
          at: `section ${section}, layers ${band.fromLayer} to ${band.toLayer}`,
          point: thin.point,
          demand: thin.area * 1e6,
          capacity: job.print.beadWidth ** 2 * 1e6,
          unit: 'mm²',
          source: 'the job',
          verdict: 'warn',
          say: sayThinPlace(thin, job.print, job.units),
        }),
      ),
    ),
  )
}
