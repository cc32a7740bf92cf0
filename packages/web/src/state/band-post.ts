import type { Plan } from '@dawnlift/core/plan'

export type DrawnBand = Plan['bands'][number]['bands'][number]

/** The bands of a plan for whoever draws them: those that were not in the last one, and the numbers of all. */
export interface BandPost {
  readonly fresh: readonly { readonly number: number; readonly section: string; readonly band: DrawnBand }[]
  readonly all: readonly number[]
}

/** Posts the bands of each plan to one drawer; a band that stays is posted once. */
export function bandPoster() {
  let known = new Map<DrawnBand, number>()
  let last = 0
  return ({ bands }: Pick<Plan, 'bands'>): BandPost => {
    const now = new Map<DrawnBand, number>()
    const fresh: BandPost['fresh'][number][] = []
    for (const { section, bands: own } of bands)
      for (const band of own) {
        const before = known.get(band)
        const number = before ?? ++last
        if (before === undefined) fresh.push({ number, section, band })
        now.set(band, number)
      }
    known = now
    return { fresh, all: [...now.values()] }
  }
}
