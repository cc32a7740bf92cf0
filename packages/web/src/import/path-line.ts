import { flattenPath, type Path } from '@dawnlift/core/geometry'

/** SVG path data of a drawn path, curves as chords a centimetre off at most: for looking at, not for measuring. */
export const pathLine = (path: Path): string =>
  `M${flattenPath(path, 0.01)
    .map(([x, y]) => `${x.toFixed(3)} ${y.toFixed(3)}`)
    .join('L')}${path.closed ? 'Z' : ''}`
