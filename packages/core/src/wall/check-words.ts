import { pathLength } from '../geometry/index.js'
import type { Wall } from '../job/index.js'
import type { Units } from '../limit/index.js'
import { formatQuantity, type Metres } from '../quantity/index.js'
import type { Problem } from '../result/index.js'

export const problem = (code: string, at: string, say: string): Problem => ({ code, at, say })
/** A length along or up a wall, and one across it; metric unless the parts say otherwise. */
export const sayLength = (length: Metres, units: Units = 'metric'): string =>
  units === 'metric' ? `${length.toFixed(3)} m` : formatQuantity(length, 'length', units)
export const sayThickness = (length: Metres, units: Units = 'metric'): string =>
  units === 'metric' ? `${Math.round(length * 1000)} mm` : formatQuantity(length, 'length', units)

/** Two millionths of a metre: drawings round. */
export const drawn: Metres = 2e-6

/** The wall a part names, or the problem that there is none. */
export function hostWall(
  walls: readonly Wall[],
  part: { readonly id: string; readonly wall: string },
  at: string,
  noun: string,
): { wall: Wall; length: Metres } | Problem {
  const wall = walls.find(other => other.id === part.wall)
  if (!wall)
    return problem(
      'wall/unknown',
      `${at}.wall`,
      `${noun} ${part.id} is in wall ${part.wall}, which is not in the plan; walls are ${walls.map(({ id }) => id).join(', ')}.`,
    )
  return { wall, length: wall.centreline.bulges.length > 0 ? pathLength(wall.centreline) : 0 }
}

/** That a part lies along its wall from end to end. */
export function outsideAlong(
  part: { readonly id: string; readonly at: Metres },
  width: Metres,
  host: { wall: Wall; length: Metres },
  at: string,
  noun: string,
  code: string,
  units?: Units,
): readonly Problem[] {
  const [from, to] = [part.at - width / 2, part.at + width / 2]
  if (from >= -drawn && to <= host.length + drawn) return []
  return [
    problem(
      code,
      `${at}.at`,
      `${noun} ${part.id} runs from ${sayLength(from, units)} to ${sayLength(to, units)} along wall ${host.wall.id}, which is ${sayLength(host.length, units)} long; move it or make it narrower.`,
    ),
  ]
}
