/** What to do against plastic-shrinkage cracks at an evaporation index. */
export interface DryingAdvice {
  readonly level: 'none' | 'watch' | 'protect' | 'stop'
  readonly say: string
  readonly source: string
}

const practice = 'common practice, no source'

/**
 * Precautions for fresh beads, which do not bleed: the low thresholds count.
 *
 * Source   thresholds 0.25, 0.5, 1.0 kg/m²h [ACI305-2010] and departments of transport, read second-hand and from memory.
 * Range    any index; the estimate itself is ±40 % [Hover2020].
 * Assumes  nothing of the mix: fibres and shrinkage reducers help, silica fume hurts.
 */
export function dryingAdvice(evaporation: number): DryingAdvice {
  if (evaporation < 0.25)
    return { level: 'none', say: 'Cover at the end of the lift as always.', source: practice }
  if (evaporation < 0.5)
    return {
      level: 'watch',
      say: 'Damp the slab and the lift below, screen the wind, cover each face as soon as it is firm.',
      source: practice,
    }
  if (evaporation < 1)
    return {
      level: 'protect',
      say: 'Fog the air beside the fresh layers, shade them, cover behind the nozzle within the resting time.',
      source: 'ACI305-2010',
    }
  return {
    level: 'stop',
    say: 'Even ordinary concrete would crack: wait for a better hour, or print only under shade, screen and fog.',
    source: 'ACI305-2010',
  }
}
