import type { ReactNode } from 'react'

/** A plot in pixels of its own: where its axes run, and how a value gets a place. */
export interface Frame {
  readonly width: number
  readonly height: number
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
  readonly x: (value: number) => number
  readonly y: (value: number) => number
}

export interface Axis {
  readonly from: number
  readonly to: number
}

const margin = { left: 52, right: 12, top: 26, bottom: 34 }

export function frameOf(width: number, height: number, across: Axis, up: Axis): Frame {
  const { left, right, top, bottom } = margin
  const share = ({ from, to }: Axis, value: number) => (value - from) / (to - from || 1)
  return {
    width,
    height,
    left,
    right: width - right,
    top,
    bottom: height - bottom,
    x: value => left + share(across, value) * (width - left - right),
    y: value => height - bottom - share(up, value) * (height - top - bottom),
  }
}

/** Round numbers to mark an axis with, about so many. */
export function ticks({ from, to }: Axis, wanted: number): readonly number[] {
  const rough = (to - from) / wanted
  const power = 10 ** Math.floor(Math.log10(rough))
  const step = [1, 2, 5, 10].map(factor => factor * power).find(each => each >= rough) ?? 10 * power
  const first = Math.ceil(from / step - 1e-9)
  const count = Math.floor(to / step + 1e-9) - first + 1
  return Array.from({ length: Math.max(0, count) }, (_, index) => (first + index) * step)
}

/** Axes, grid and words; what is plotted comes as children. */
export function Chart({
  frame,
  across,
  up,
  label,
  children,
}: {
  readonly frame: Frame
  readonly across: { readonly marks: readonly (readonly [number, string])[]; readonly what: string }
  readonly up: { readonly marks: readonly (readonly [number, string])[]; readonly what: string }
  readonly label: string
  readonly children: ReactNode
}) {
  const { width, height, left, right, top, bottom, x, y } = frame
  return (
    <svg className="chart" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={label}>
      {up.marks.map(([value, text]) => (
        <g key={value}>
          <line className="grid" x1={left} x2={right} y1={y(value)} y2={y(value)} />
          <text x={left - 6} y={y(value) + 4} textAnchor="end">
            {text}
          </text>
        </g>
      ))}
      {across.marks.map(([value, text]) => (
        <text key={value} x={x(value)} y={bottom + 16} textAnchor="middle">
          {text}
        </text>
      ))}
      <line className="axis" x1={left} x2={right} y1={bottom} y2={bottom} />
      <text x={right} y={height - 4} textAnchor="end">
        {across.what}
      </text>
      <text x={left - 46} y={top - 12}>
        {up.what}
      </text>
      {children}
    </svg>
  )
}

export const pathOf = (points: readonly (readonly [number, number])[]): string =>
  points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join(' ')
