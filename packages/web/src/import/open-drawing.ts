import { type Result, success } from '@dawnlift/core/result'
import type { DrawingUnit } from '@dawnlift/document/job'
import type { Drawing } from '@dawnlift/formats/dxf'
import { reading } from './reading.js'
import { likeliestUnit, type SheetSize, sheetSize, sizeFromProblems } from './unit-sizes.js'

/** A drawing as read, with a unit proposed for it. */
export interface OpenedDrawing {
  readonly name: string
  readonly content: Uint8Array
  readonly size: SheetSize
  readonly unit: DrawingUnit
  /** The unit the drawing itself says and that gives a building’s size. */
  readonly said?: DrawingUnit
  /** In metres by that unit; coordinates scale when another one is taken. */
  readonly drawing: Drawing
}

/** Reads a drawing, by its own unit if that is likely, else by the one that makes it a house. */
export async function openDrawing(name: string, content: Uint8Array): Promise<Result<OpenedDrawing>> {
  const own = await reading().drawing(content, name)
  if (own.ok) {
    const { unit } = own.value
    return success({ name, content, size: sheetSize(own.value), unit, said: unit, drawing: own.value })
  }
  const size = sizeFromProblems(own.problems)
  if (!size) return own
  const unit = likeliestUnit(size)
  const read = await reading().drawing(content, name, unit)
  return read.ok ? success({ name, content, size, unit, drawing: read.value }) : read
}
