import type { Fill, Pen, TextHeight } from './pens.js'

/** A point on paper: millimetres from the sheet's lower left corner, y upwards. */
export type PaperPoint = readonly [number, number]

interface MarkCommon {
  /** What the mark stands for (wall, lift, call …): the app finds it by this. */
  readonly ref?: string
  /** Said when pointed at. */
  readonly title?: string
}

/** A chain of lines; `bulges` as in a building path, none: straight. */
export interface LineMark extends MarkCommon {
  readonly kind: 'line'
  readonly points: readonly PaperPoint[]
  readonly bulges?: readonly number[]
  readonly closed: boolean
  readonly pen: Pen
  readonly fill?: Fill
}

/** A strip of true width, as a bead lies. */
export interface RibbonMark extends MarkCommon {
  readonly kind: 'ribbon'
  readonly points: readonly PaperPoint[]
  readonly bulges: readonly number[]
  readonly closed: boolean
  /** mm on paper. */
  readonly width: number
  readonly fill: Fill
}

/** A region with holes; even-odd. */
export interface RegionMark extends MarkCommon {
  readonly kind: 'region'
  readonly rings: readonly (readonly PaperPoint[])[]
  readonly pen: Pen
  readonly fill: Fill
}

export interface CircleMark extends MarkCommon {
  readonly kind: 'circle'
  readonly at: PaperPoint
  readonly radius: number
  readonly pen: Pen
  readonly fill?: Fill
}

export interface TextMark extends MarkCommon {
  readonly kind: 'text'
  readonly at: PaperPoint
  readonly text: string
  readonly height: TextHeight
  readonly anchor: 'start' | 'middle' | 'end'
  /** Degrees, positive turning left. */
  readonly turn?: number
  /** A paper-coloured halo keeps it readable over lines. */
  readonly halo?: boolean
  readonly fill?: Fill
}

export type Mark = LineMark | RibbonMark | RegionMark | CircleMark | TextMark

export interface DrawingLayer {
  readonly name: string
  readonly marks: readonly Mark[]
}

/** A drawing as plain data in paper millimetres. */
export interface Drawing {
  readonly title: string
  /** Said to those who cannot see it. */
  readonly says: string
  readonly width: number
  readonly height: number
  readonly layers: readonly DrawingLayer[]
}

export const layer = (name: string, marks: readonly Mark[]): DrawingLayer => ({ name, marks })
