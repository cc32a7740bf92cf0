import { house } from './fixtures/house.js'
import { type BandCache, layAllBeads } from './lay-beads.js'

/** The invented house from nothing, and after one box was moved. `initGeometry` must have run. */
export function bench(): readonly { name: string; run: () => void }[] {
  const kept: BandCache = new Map()
  layAllBeads(house.parts, house.sections, kept)
  const [first, ...rest] = house.parts.embeds
  let moves = 0
  return [
    { name: 'lay all beads of a house', run: () => void layAllBeads(house.parts, house.sections) },
    {
      name: 'lay all beads after moving one box',
      run: () => {
        moves += 1
        const moved = { ...first!, at: first!.at + 0.001 * (moves % 50) }
        layAllBeads({ ...house.parts, embeds: [moved, ...rest] }, house.sections, kept)
      },
    },
  ]
}
