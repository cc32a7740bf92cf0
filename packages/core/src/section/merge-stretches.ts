import type { Stretch } from './section.js'

/** Stretches of one wall that touch become one. */
export function mergeStretches(stretches: readonly Stretch[]): readonly Stretch[] {
  const walls = [...new Set(stretches.map(stretch => stretch.wall))]
  return walls.flatMap(wall => {
    const own = stretches.filter(stretch => stretch.wall === wall).sort((a, b) => a.from - b.from)
    return own.reduce<Stretch[]>((merged, next) => {
      const last = merged.at(-1)
      if (last && next.from - last.to < 1e-5) merged[merged.length - 1] = { ...last, to: next.to }
      else merged.push(next)
      return merged
    }, [])
  })
}
