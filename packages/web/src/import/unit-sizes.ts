import type { Problem } from '@dawnlift/core/result'
import type { DrawingUnit } from '@dawnlift/document/job'
import type { Drawing } from '@dawnlift/formats/dxf'

const metresPer: Readonly<Record<DrawingUnit, number>> = { mm: 0.001, cm: 0.01, m: 1, in: 0.0254, ft: 0.3048 }

/** Width and height of a drawing in its own units, whatever they are. */
export interface SheetSize {
  readonly width: number
  readonly height: number
}

export const drawingUnits = Object.keys(metresPer) as readonly DrawingUnit[]

export const sheetSize = ({ least, most, metresPerUnit }: Drawing): SheetSize => ({
  width: (most[0] - least[0]) / metresPerUnit,
  height: (most[1] - least[1]) / metresPerUnit,
})

/** The size a reader tells when it could not know the unit: all else about the drawing was in order. */
export function sizeFromProblems(problems: readonly Problem[]): SheetSize | undefined {
  const told = problems.find(each => each.code === 'dxf/no-unit' || each.code === 'dxf/unlikely-unit')
  const { width, height } = told?.values ?? {}
  return typeof width === 'number' && typeof height === 'number' ? { width, height } : undefined
}

export const sizeIn = (unit: DrawingUnit, { width, height }: SheetSize): SheetSize => ({
  width: width * metresPer[unit],
  height: height * metresPer[unit],
})

/** The unit in which the sheet comes nearest to a house of 12 m, on a scale of ratios. */
export function likeliestUnit(size: SheetSize): DrawingUnit {
  const off = (unit: DrawingUnit) =>
    Math.abs(Math.log(Math.max(sizeIn(unit, size).width, sizeIn(unit, size).height) / 12))
  return [...drawingUnits].sort((a, b) => off(a) - off(b))[0]!
}
