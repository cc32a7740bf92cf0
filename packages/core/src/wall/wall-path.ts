import type { Path } from '../geometry/index.js'
import type { Wall } from '../job/index.js'

/** Paths along walls, by what they depend on besides the wall: a tie runs through many bands, and is forgotten with its wall. */
const known = new WeakMap<Wall, Map<string, Path>>()

export function wallPath(wall: Wall, key: string, make: () => Path): Path {
  const paths = known.get(wall) ?? new Map<string, Path>()
  known.set(wall, paths)
  const path = paths.get(key) ?? make()
  paths.set(key, path)
  return path
}
