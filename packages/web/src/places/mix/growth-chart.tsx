import type { BandPoint, FittedPoint } from '@dawnlift/core/mix'
import { formatQuantity, unitTable } from '@dawnlift/core/quantity'
import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'
import { Chart, frameOf, pathOf, ticks } from './chart-frame.js'

/** What is drawn of one growth: its band over age, and the tests it was fitted to. */
export interface Growth {
  readonly what: string
  readonly band: readonly BandPoint[]
  readonly points: readonly FittedPoint[]
  readonly outliers: readonly string[]
}

/** A growth against age: tests as dots, best estimate, the band, and the lower edge that planning uses. */
export function GrowthChart({ growth }: { readonly growth: Growth }) {
  const units = useApp(state => state.units)
  const { band, points, outliers, what } = growth
  const ages = [...band.map(each => each.age), ...points.map(each => each.age)]
  const most = Math.max(
    ...band.map(each => Math.min(each.upper, 2.5 * each.fitted)),
    ...points.map(each => each.measured),
  )
  const across = { from: 0, to: Math.max(...ages) }
  const up = { from: 0, to: most * 1.05 }
  const frame = frameOf(560, 260, across, up)
  const { x, y, bottom } = frame
  // Marks are round in the unit they are read in, not in pascals.
  const inUnit = (pascals: number) => Number.parseFloat(formatQuantity(pascals, 'pressure', units))
  const perUnit = most / (inUnit(most) || 1)
  const edge = (side: 'lower' | 'upper' | 'fitted') =>
    band.map(each => [x(each.age), Math.max(frame.top, y(each[side]))] as const)
  return (
    <Chart
      frame={frame}
      label={words.fitted.chart(what, points.length)}
      across={{
        marks: ticks({ from: 0, to: across.to / 60 }, 6).map(minutes => [minutes * 60, `${minutes}`]),
        what: words.fitted.ageAxis,
      }}
      up={{
        marks: ticks({ from: 0, to: up.to / perUnit }, 5).map(value => [
          value * perUnit,
          String(Number(value.toFixed(6))),
        ]),
        what: `${what}, ${unitTable.pressure.shown[units]}`,
      }}
    >
      <path
        className="band"
        d={`${pathOf(edge('upper'))} ${pathOf([...edge('lower')].reverse()).replace('M', 'L')} Z`}
      />
      <path className="best" d={pathOf(edge('fitted'))} />
      <path className="lower" d={pathOf(edge('lower'))} />
      {points.map(point => {
        const off = outliers.includes(point.at)
        return (
          <g key={`${point.at} ${point.measured}`}>
            <title>
              {words.fitted.measured(
                point.at,
                formatQuantity(point.measured, 'pressure', units),
                Math.round(point.age / 60),
              )}
            </title>
            {off ? (
              <>
                <path className="far" d={cross(x(point.age), y(point.measured))} />
                <text x={x(point.age) + 8} y={y(point.measured) + 4}>
                  {point.at.split(':').at(-1)}
                </text>
              </>
            ) : (
              <circle className="test" cx={x(point.age)} cy={Math.min(bottom, y(point.measured))} r={3.5} />
            )}
          </g>
        )
      })}
    </Chart>
  )
}

const cross = (x: number, y: number): string =>
  `M${x - 5} ${y - 5} L${x + 5} ${y + 5} M${x - 5} ${y + 5} L${x + 5} ${y - 5}`

/** Each test's distance from the curve, over its age: a fan or a bend here says the curve is the wrong one. */
export function ResidualChart({ growth }: { readonly growth: Growth }) {
  const { points, outliers, what } = growth
  const most = Math.max(0.15, ...points.map(point => Math.abs(point.residual)))
  const across = { from: 0, to: Math.max(...points.map(point => point.age)) }
  const frame = frameOf(560, 130, across, { from: -most, to: most })
  const { x, y, left, right } = frame
  return (
    <Chart
      frame={frame}
      label={words.fitted.residuals(what)}
      across={{ marks: [], what: words.fitted.age }}
      up={{
        marks: [-most / 1.3, 0, most / 1.3].map(value => [
          value,
          `${value > 0 ? '+' : ''}${Math.round(value * 100)} %`,
        ]),
        what: words.fitted.offCurve,
      }}
    >
      <line className="axis" x1={left} x2={right} y1={y(0)} y2={y(0)} />
      {points.map(point => (
        <circle
          key={`${point.at} ${point.measured}`}
          className={outliers.includes(point.at) ? 'far' : 'test'}
          cx={x(point.age)}
          cy={y(point.residual)}
          r={3}
        />
      ))}
    </Chart>
  )
}
