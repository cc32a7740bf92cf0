import { clockText, localTime } from '@dawnlift/core/clock'
import { stiffness, yieldStress } from '@dawnlift/core/mix'
import type { Plan } from '@dawnlift/core/plan'
import { formatQuantity } from '@dawnlift/core/quantity'
import { Group, Table } from '@mantine/core'
import { Caution, WithPlan } from '../../parts/index.js'
import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'

/** What the material does: stiffening with age, and the water it needs through the day. */
export const MixPlace = () => <WithPlan>{plan => <Mix plan={plan} />}</WithPlan>

const ages = [0, 15, 30, 60, 120, 240, 360]

function Mix({ plan }: { readonly plan: Plan }) {
  const units = useApp(state => state.units)
  const { mix } = plan.job
  const pressure = (pascals: number) => formatQuantity(pascals, 'pressure', units)
  return (
    <Group align="start" gap="lg" grow preventGrowOverflow={false}>
      <section className="sheet">
        <h2>{mix.name}</h2>
        <p className="soft">
          From{' '}
          {mix.provenance === 'default'
            ? 'the default mix: wide bands, no tests of this site'
            : mix.provenance}
          . Planning uses the lower band: one mix in {Math.round(1 / mix.lowerProbability)} is weaker.
        </p>
        <Table>
          <Table.Thead>
            <Table.Tr>
              {['Age at 20 °C', 'Yield stress', 'planned with', 'Stiffness', 'planned with'].map(
                (head, index) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: the heads never change order
                  <Table.Th key={index}>{head}</Table.Th>
                ),
              )}
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {ages.map(minutes => (
              <Table.Tr key={minutes}>
                <Table.Td>{minutes} min</Table.Td>
                <Table.Td>{pressure(yieldStress(mix.fitted.yield, minutes * 60))}</Table.Td>
                <Table.Td>{pressure(yieldStress(mix.lower.yield, minutes * 60))}</Table.Td>
                <Table.Td>{pressure(stiffness(mix.fitted.stiffness, minutes * 60))}</Table.Td>
                <Table.Td>{pressure(stiffness(mix.lower.stiffness, minutes * 60))}</Table.Td>
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
        <Caution>{words.caution}</Caution>
      </section>
      <WaterThroughTheDay plan={plan} />
    </Group>
  )
}

/** Mix at the nozzle, hour by hour, on the day the campaign clock shows. */
function WaterThroughTheDay({ plan }: { readonly plan: Plan }) {
  const moment = useApp(state => state.moment)
  const units = useApp(state => state.units)
  const zone = plan.job.site.timeZone
  const date = localTime(moment, zone).date
  const degrees = (value: number | undefined) =>
    value === undefined ? '—' : formatQuantity(value, 'temperature', units)
  return (
    <section className="sheet">
      <h2>{date}: mix at the nozzle</h2>
      <Table>
        <Table.Thead>
          <Table.Tr>
            {['Hour', 'Air', 'Mix', 'with chiller', 'water needed', 'evaporation'].map(head => (
              <Table.Th key={head}>{head}</Table.Th>
            ))}
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>
          {plan.campaign.hours
            .filter(hour => localTime(hour.start, zone).date === date)
            .map(hour => (
              <Table.Tr key={hour.start} className={hour.open ? '' : 'soft'}>
                <Table.Td>{clockText(hour.start, zone)}</Table.Td>
                <Table.Td>{degrees(hour.weather.air)}</Table.Td>
                <Table.Td>{degrees(hour.mixTemperature)}</Table.Td>
                <Table.Td>{degrees(hour.mixTemperatureChilled)}</Table.Td>
                <Table.Td>{degrees(hour.waterNeeded)}</Table.Td>
                <Table.Td>{hour.evaporation.toFixed(2)} kg/m²h</Table.Td>
              </Table.Tr>
            ))}
        </Table.Tbody>
      </Table>
    </section>
  )
}
