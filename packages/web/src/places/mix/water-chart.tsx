import { addDays, clockText, localTime } from '@dawnlift/core/clock'
import type { Plan } from '@dawnlift/core/plan'
import { formatQuantity } from '@dawnlift/core/quantity'
import type { PrintHour } from '@dawnlift/core/weather'
import { Button, Group } from '@mantine/core'
import { Caution } from '../../parts/index.js'
import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'
import { dayText } from '../days/day-text.js'
import { Scroller } from '../scroller.js'
import { type Axis, Chart, frameOf, pathOf, ticks } from './chart-frame.js'
import { waterText } from './water-text.js'

const { atNozzle } = words

/** Mix at the nozzle hour by hour, on the day the campaign clock shows: how cold must the water be at ten? */
export function WaterThroughTheDay({ plan }: { readonly plan: Plan }) {
  const moment = useApp(state => state.moment)
  const zone = plan.job.site.timeZone
  const date = localTime(moment, zone).date
  const hours = plan.campaign.hours.filter(hour => localTime(hour.start, zone).date === date)
  const turn = (days: number) => {
    const wanted = addDays(date, days)
    const hour = plan.campaign.hours.find(each => localTime(each.start, zone).date === wanted)
    if (hour) useApp.getState().setMoment(moment + days * 86_400)
  }
  return (
    <section className="sheet" aria-labelledby="water-title">
      <Group justify="space-between">
        <h2 id="water-title">{atNozzle.title(dayText(date))}</h2>
        <Group gap="xs">
          <Button variant="default" onClick={() => turn(-1)}>
            {atNozzle.before}
          </Button>
          <Button variant="default" onClick={() => turn(1)}>
            {atNozzle.after}
          </Button>
        </Group>
      </Group>
      {hours.length > 0 && <Temperatures hours={hours} plan={plan} />}
      <details>
        <summary>{atNozzle.hourly}</summary>
        <HourTable hours={hours} plan={plan} />
      </details>
      <Caution>{words.waterCaution}</Caution>
    </section>
  )
}

function Temperatures({ hours, plan }: { readonly hours: readonly PrintHour[]; readonly plan: Plan }) {
  const units = useApp(state => state.units)
  const { rules, batching } = plan.job
  const most = rules.mixTemperatureMost.value
  const waters = hours.flatMap(hour =>
    hour.waterNeeded === undefined ? [] : [Math.max(0, hour.waterNeeded)],
  )
  const all = [most, ...waters, ...hours.flatMap(hour => [hour.mixTemperature, hour.weather.air])]
  const up = {
    from: Math.floor(Math.min(...all, batching.waterTemperature) / 5) * 5,
    to: Math.ceil(Math.max(...all) / 5) * 5,
  }
  const frame = frameOf(760, 280, { from: 0, to: 24 }, up)
  const { x, y, left, right, top, bottom } = frame
  const line = (value: (hour: PrintHour) => number | undefined) =>
    pathOf(
      hours.flatMap((hour, index) => {
        const degrees = value(hour)
        return degrees === undefined ? [] : [[x(index + 0.5), y(degrees)] as const]
      }),
    )
  const degrees = (value: number) => formatQuantity(value, 'temperature', units, { step: 1 })
  return (
    <>
      <Chart
        frame={frame}
        label={atNozzle.chart}
        across={{ marks: [0, 3, 6, 9, 12, 15, 18, 21, 24].map(hour => [hour, `${hour}:00`]), what: '' }}
        up={{ marks: roundDegrees(up, units).map(value => [value, degrees(value)]), what: '' }}
      >
        {hours.map((hour, index) =>
          hour.open ? (
            <rect
              key={hour.start}
              className="openhour"
              x={x(index)}
              width={x(1) - x(0)}
              y={top}
              height={bottom - top}
            />
          ) : null,
        )}
        <line className="most" x1={left} x2={right} y1={y(most)} y2={y(most)} />
        <path className="air" d={line(hour => hour.weather.air)} />
        <path className="best" d={line(hour => hour.mixTemperature)} />
        <path className="chilled" d={line(hour => hour.mixTemperatureChilled)} />
        <path className="water" d={line(hour => hour.waterNeeded && Math.max(up.from, hour.waterNeeded))} />
      </Chart>
      <ul className="legend">
        <li className="best">{atNozzle.tap(degrees(batching.waterTemperature))}</li>
        {hours.some(hour => hour.mixTemperatureChilled !== undefined) && (
          <li className="chilled">{atNozzle.chiller}</li>
        )}
        <li className="water">{atNozzle.water}</li>
        <li className="air">{atNozzle.air}</li>
        <li className="most">{atNozzle.limit(degrees(most))}</li>
        <li className="openhour">{atNozzle.open}</li>
      </ul>
    </>
  )
}

/** Marks that are round in the scale they are read in; places in °C. */
function roundDegrees({ from, to }: Axis, units: 'metric' | 'imperial'): readonly number[] {
  if (units === 'metric') return ticks({ from, to }, 6)
  const fahrenheit = { from: from * 1.8 + 32, to: to * 1.8 + 32 }
  return ticks(fahrenheit, 6).map(value => (value - 32) / 1.8)
}

function HourTable({ hours, plan }: { readonly hours: readonly PrintHour[]; readonly plan: Plan }) {
  const units = useApp(state => state.units)
  const zone = plan.job.site.timeZone
  const degrees = (value: number | undefined) =>
    value === undefined ? '—' : formatQuantity(value, 'temperature', units)
  return (
    <Scroller label={atNozzle.hours}>
      <table className="plain wide ruled">
        <thead>
          <tr>
            {atNozzle.heads.map(head => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {hours.map(hour => (
            <tr key={hour.start} className={hour.open ? '' : 'soft'}>
              <th scope="row">{clockText(hour.start, zone)}</th>
              <td>{degrees(hour.weather.air)}</td>
              <td>{degrees(hour.mixTemperature)}</td>
              <td>{degrees(hour.mixTemperatureChilled)}</td>
              <td>{waterText(hour.waterNeeded, degrees)}</td>
              <td>{formatQuantity(hour.evaporation, 'evaporation', units)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroller>
  )
}
