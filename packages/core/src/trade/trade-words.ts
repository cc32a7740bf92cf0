import type { Embed, EmbedKind } from '../job/index.js'

/** What to bring and what shows that the work is done, by kind. Common practice, no source. */
const kit: Readonly<Record<EmbedKind, { readonly tool: string; readonly proof: string }>> = {
  box: {
    tool: 'box template, margin trowel, level',
    proof: 'box level, front flush with the face, conduit open',
  },
  sleeve: { tool: 'sleeve cut to length, level, tape', proof: 'sleeve through, fall as drawn, ends capped' },
  pipe: { tool: 'pipe cut to length, capped, clips', proof: 'pipe plumb, capped, pressure test noted' },
  strap: { tool: 'strap, gauge block', proof: 'strap square to the wall, projecting as drawn' },
  anchor: { tool: 'anchor, drilled template', proof: 'anchor square, thread clean, projection measured' },
  niche: { tool: 'cutting wire, plank template', proof: 'niche clear to its full size, edges clean' },
  chase: {
    tool: 'chase template, cutting wire, bucket for the cuttings',
    proof: 'chase clear to its full depth and length',
  },
  plate: { tool: 'plate, level, gauge block', proof: 'plate level, flush, keyed by the layer above' },
}

export function toolOf(embed: Embed): string {
  const own = embed.kind === 'chase' || embed.kind === 'niche'
  if (embed.method === 'gap' && own) return 'tape, margin trowel to clean the edges while they are soft'
  return embed.method === 'cut' && !own ? `${kit[embed.kind].tool}, cutting wire` : kit[embed.kind].tool
}

export const proofOf = (embed: Embed): string => kit[embed.kind].proof

export const lintelWords = {
  cut: {
    tool: 'bearing template, cutting wire, level',
    proof: 'both pockets to size, seats level with each other',
  },
  set: {
    tool: 'lifting gear rated for the lintel, level, bedding mortar; props where the engineer asks for them',
    proof: 'lintel level, full bearing both ends, top flush with the last layer',
  },
} as const

export const pourWords = {
  tool: 'hose, vibrator as the engineer allows, slump cone',
  proof: 'cage cover checked before, level and slump noted, shell without cracks or bulges',
} as const

/** An inspector is told so long ahead. Common practice, no source: the authority may ask for more. */
export const INSPECTION_NOTICE = 86400

/** What is open to view, and what shows that it has been looked at. */
export const inspectionWords = (what: string) => ({
  tool: `open to view and clean before: ${what}; drawings, and the record of layers and pours`,
  proof: 'looked at and signed for before the next layer; without it the nozzle does not go on',
})
