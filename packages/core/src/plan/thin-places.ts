import { distance } from '../geometry/index.js'
import type { Job } from '../job/index.js'
import type { Finding } from '../result/index.js'
import { type SectionBands, sayThinPlace } from '../wall/index.js'

type ThinPlace = SectionBands['bands'][number]['thinPlaces'][number]

/** A thin place over the bands it goes through. */
interface Standing {
  readonly thin: ThinPlace
  readonly fromLayer: number
  readonly toLayer: number
}

/** Where the beads do not cover the wall, or two would not fit: one finding a place, whatever changes elsewhere between its layers. */
export function thinPlaces(job: Job, bands: readonly SectionBands[]): readonly Finding[] {
  return bands.flatMap(({ section, bands: each }) =>
    standing(each).map(
      ({ thin, fromLayer, toLayer }): Finding => ({
        check: 'thin-place',
        at: `section ${section}, layers ${fromLayer} to ${toLayer}`,
        point: thin.point,
        demand: thin.area * 1e6,
        capacity: job.print.beadWidth ** 2 * 1e6,
        unit: 'mm²',
        source: 'the job',
        verdict: 'warn',
        say: sayThinPlace(thin, job.print, job.units),
      }),
    ),
  )
}

/** What a recess leaves changes from layer to layer of a corbelled head: told once, where it leaves least. */
function standing(bands: SectionBands['bands']): readonly Standing[] {
  const found: Standing[] = []
  for (const { fromLayer, toLayer, thinPlaces: each } of bands)
    for (const thin of each) {
      const i = found.findIndex(other => other.toLayer === fromLayer - 1 && isSamePlace(other.thin, thin))
      const before = found[i]
      if (before) found[i] = { ...before, thin: worse(before.thin, thin), toLayer }
      else found.push({ thin, fromLayer, toLayer })
    }
  return found
}

const isSamePlace = (a: ThinPlace, b: ThinPlace): boolean =>
  a.recess && b.recess
    ? a.recess.ref === b.recess.ref
    : a.kind === b.kind && distance(a.point, b.point) < 1e-3 && Math.abs(a.area - b.area) < 1e-2 * a.area

const worse = (a: ThinPlace, b: ThinPlace): ThinPlace =>
  a.recess && b.recess && b.recess.left < a.recess.left ? b : a
