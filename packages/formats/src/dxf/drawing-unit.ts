import type { Result } from '@dawnlift/core/result'
import { failure, success } from '@dawnlift/core/result'
import type { DrawingUnit } from '@dawnlift/document/job'

export const metresPerUnit: Readonly<Record<DrawingUnit, number>> = {
  mm: 0.001,
  cm: 0.01,
  m: 1,
  in: 0.0254,
  ft: 0.3048,
}

/** Codes of $INSUNITS (DXF reference, header variables) that a plan may be drawn in. */
const unitCodes: Readonly<Record<number, DrawingUnit>> = { 1: 'in', 2: 'ft', 4: 'mm', 5: 'cm', 6: 'm' }

/** A plan that one machine prints is between these across [m]; outside them the unit is asked for. */
const LEAST_SIZE = 1.5
const MOST_SIZE = 60

/**
 * What a drawing unit is. The job's own word counts; without one, what the drawing says is believed only
 * when the drawing then has the size of a building. Two of ten real drawings say something else than they mean.
 */
export function drawingUnit(
  code: number | undefined,
  width: number,
  height: number,
  asked: DrawingUnit | undefined,
  fileName: string,
): Result<DrawingUnit> {
  if (asked) return success(asked)
  const said = code === undefined ? undefined : unitCodes[code]
  const size = Math.max(width, height)
  const likely =
    said !== undefined && size * metresPerUnit[said] >= LEAST_SIZE && size * metresPerUnit[said] <= MOST_SIZE
  if (said && likely) return success(said)
  const words = said
    ? `The drawing says its unit is ${said}, but then it is ${sizeIn(said, width, height)}: unlikely for a building.`
    : code
      ? `The drawing’s unit code ${code} is not one for plans (mm, cm, m, in, ft).`
      : 'The drawing does not say its unit.'
  const choices = (Object.keys(metresPerUnit) as DrawingUnit[]).map(
    unit => `${unit}: ${sizeIn(unit, width, height)}`,
  )
  return failure([
    {
      code: said ? 'dxf/unlikely-unit' : 'dxf/no-unit',
      at: fileName,
      say: `${words} Write “unit:” under “drawing:” in the job. It measures ${choices.join('; ')}.`,
      values: { width, height, ...(said ? { said } : {}) },
    },
  ])
}

const sizeIn = (unit: DrawingUnit, width: number, height: number): string =>
  `${[width, height].map(side => Number((side * metresPerUnit[unit]).toPrecision(3))).join(' × ')} m`
