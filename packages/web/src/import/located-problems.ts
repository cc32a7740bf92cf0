import { type Point, pathLength, pathPoint } from '@dawnlift/core/geometry'
import type { Job } from '@dawnlift/core/job'
import type { Problem } from '@dawnlift/core/result'

type Parts = Pick<Job, 'walls' | 'openings' | 'embeds' | 'columns'>

/** Problems that name a part by its place in a list, with where in the building it stands: `walls[3] (2.100, 0.400) m`. */
export const locatedProblems = (problems: readonly Problem[], parts: Parts): readonly Problem[] =>
  problems.map(problem => {
    const point = placeOf(problem.at, parts)
    return point
      ? { ...problem, at: `${problem.at} (${point[0].toFixed(3)}, ${point[1].toFixed(3)}) m` }
      : problem
  })

function placeOf(at: string, parts: Parts): Point | undefined {
  const [, list, index] = /^(walls|openings|embeds|columns)\[(\d+)\]/.exec(at) ?? []
  if (list === undefined) return undefined
  const part = parts[list as keyof Parts][Number(index)]
  if (!part) return undefined
  const wall = 'centreline' in part ? part : parts.walls.find(each => each.id === part.wall)
  if (!wall || wall.centreline.bulges.length === 0) return undefined
  const length = pathLength(wall.centreline)
  const station = 'at' in part ? Math.min(length, Math.max(0, part.at)) : length / 2
  return pathPoint(wall.centreline, station)
}
