import type { Finding } from '../result/index.js'
import type { SectionBands } from './bead.js'

/** Thin places of a section as findings, each told once where it first appears. */
export function checkThinPlaces(laid: SectionBands): readonly Finding[] {
  const told = new Set<string>()
  return laid.bands.flatMap(band =>
    band.thinPlaces.flatMap(({ point, area, say }): readonly Finding[] => {
      const where = `${point[0].toFixed(2)}, ${point[1].toFixed(2)}`
      if (told.has(where + say)) return []
      told.add(where + say)
      return [
        {
          check: 'thin-place',
          at: `section ${laid.section}, layer ${band.fromLayer}`,
          point,
          demand: area,
          capacity: 0,
          unit: 'm²',
          source: 'the job',
          verdict: 'warn',
          say: `layer ${band.fromLayer} at (${where}): ${say}`,
        },
      ]
    }),
  )
}
