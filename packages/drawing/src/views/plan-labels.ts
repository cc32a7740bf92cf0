import type { Embed, Job } from '@dawnlift/core/job'
import { clipped, line, type Mark, type PaperMap, text, textWidth } from '../paper/index.js'
import { beside, wallById } from './wall-shapes.js'

/** The ids of embeds beside their wall, each with a leader; labels that would meet step further out. */
export function embedLabels(
  { job }: { readonly job: Job },
  embeds: readonly Embed[],
  paper: PaperMap,
): Mark[] {
  const taken: { x: number; y: number; width: number }[] = []
  return [...embeds]
    .sort((a, b) => (a.wall < b.wall ? -1 : a.wall > b.wall ? 1 : a.at - b.at || (a.id < b.id ? -1 : 1)))
    .flatMap(embed => {
      const wall = wallById(job, embed.wall)
      if (!wall) return []
      const side = embed.face === 'right' ? -1 : 1
      const from = paper.toPaper(beside(wall, embed.at, (side * wall.thickness) / 2))
      const away = paper.toPaper(beside(wall, embed.at, (side * wall.thickness) / 2 + side * 0.1))
      const length = Math.hypot(away[0] - from[0], away[1] - from[1]) || 1
      const out = [(away[0] - from[0]) / length, (away[1] - from[1]) / length] as const
      const words = clipped(embed.id, 24, 'small')
      const width = textWidth(words, 'small') + 1
      let reach = 4
      let at = from
      for (let tries = 0; tries < 12; tries++, reach += 3) {
        at = [from[0] + out[0] * reach, from[1] + out[1] * reach]
        const clash = taken.some(
          other => Math.abs(other.x - at[0]) < (other.width + width) / 2 && Math.abs(other.y - at[1]) < 2.8,
        )
        if (!clash) break
      }
      taken.push({ x: at[0], y: at[1], width })
      return [
        line([from, [at[0] - out[0] * 1.4, at[1] - out[1] * 1.4]], 'dimension'),
        text([at[0], at[1] - 0.75], words, 'small', 'middle', { halo: true, ref: embed.id }),
      ]
    })
}
