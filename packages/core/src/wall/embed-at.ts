import type { Point } from '../geometry/index.js'
import type { Embed, PrintRules } from '../job/index.js'
import type { Metres } from '../quantity/index.js'
import { layerMiddle, layersBelow } from './layers.js'

/** How far a layer may step in over the one below [m]. */
export const stepMost = ({ overhang, beadWidth }: PrintRules): Metres => overhang * beadWidth

/**
 * Layers below its top over which a corbelled head closes: it comes in by the step allowed, from both sides and from the
 * back, until one more step closes it. Infinite where no step is allowed.
 *
 *   n = ⌈min(w/2, d)/s⌉ − 1     w wide, d deep, or right through; a step s
 */
export function headLayers({ head, width, depth, face }: Embed, print: PrintRules): number {
  if (head !== 'corbelled') return 0
  const reach = face === 'through' ? width / 2 : Math.min(width / 2, depth)
  const step = stepMost(print)
  return step > 0 ? Math.ceil(reach / step - 1e-9) - 1 : Number.POSITIVE_INFINITY
}

/** An embed with the width and depth it has at height z: those of its head, where that has begun to close. */
export function embedAt(embed: Embed, z: Metres, print: PrintRules): Embed {
  if (embed.head !== 'corbelled') return embed
  const h = print.layerHeight
  const above = Math.round(z / h + 0.5) - layersBelow(embed.bottom + embed.height, h)
  const steps = Math.max(0, above + headLayers(embed, print))
  const gone = steps * stepMost(print)
  const depth = embed.face === 'through' ? embed.depth : embed.depth - gone
  return steps === 0 ? embed : { ...embed, width: embed.width - 2 * gone, depth }
}

/** Outline of an embed in its face, as stations and heights: up its far side and down its near one. A corbelled head leans in. */
export function embedOutline(embed: Embed, print: PrintRules): readonly Point[] {
  const { at, bottom, height, width } = embed
  const [h, top, steps] = [print.layerHeight, bottom + height, headLayers(embed, print)]
  const last = embedAt(embed, layerMiddle(layersBelow(top, h), h), print).width
  const levels = [[bottom, width], ...(steps > 0 ? [[top - steps * h, width]] : []), [top, last]] as const
  const side = (sign: 1 | -1) => levels.map(([up, wide]): Point => [at + (sign * wide!) / 2, up!])
  return [...side(1), ...side(-1).reverse()]
}
