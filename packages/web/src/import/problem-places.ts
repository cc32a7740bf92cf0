import type { Point } from '@dawnlift/core/geometry'
import type { Problem } from '@dawnlift/core/result'

export interface PlacedProblem {
  readonly number: number
  readonly problem: Problem
  readonly point?: Point
}

const place = /\((-?\d+(?:\.\d+)?), (-?\d+(?:\.\d+)?)\)/

/** Problems numbered, with the place in the drawing that they name, if they name one. */
export const placedProblems = (problems: readonly Problem[]): readonly PlacedProblem[] =>
  problems.map((problem, index) => {
    const found = place.exec(problem.at) ?? place.exec(problem.say)
    return {
      number: index + 1,
      problem,
      ...(found ? { point: [Number(found[1]), Number(found[2])] as const } : {}),
    }
  })
