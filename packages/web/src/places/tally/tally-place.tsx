import type { Plan } from '@dawnlift/core/plan'
import { formatQuantity } from '@dawnlift/core/quantity'
import { Group, Table } from '@mantine/core'
import { Figure, OpenNumber, WithPlan } from '../../parts/index.js'
import { useApp } from '../../state/index.js'

/** What the job takes and what it costs, by day and by line. */
export const TallyPlace = () => <WithPlan>{plan => <Counted plan={plan} />}</WithPlan>

function Counted({ plan }: { readonly plan: Plan }) {
  const units = useApp(state => state.units)
  const { total, byDay, cost, wallFace } = plan.tally
  const money = (amount: number) =>
    new Intl.NumberFormat('en-GB', {
      style: 'currency',
      currency: cost.currency,
      maximumFractionDigits: 0,
    }).format(amount)
  return (
    <>
      <Group gap="xl" mb="lg">
        <Figure value={formatQuantity(total.volume, 'volume', units)} what="concrete through the nozzle" />
        <Figure value={formatQuantity(total.beadLength, 'length', units)} what="of bead" />
        <Figure
          value={total.bags.toLocaleString('en-GB')}
          what={`bags, ${formatQuantity(total.dry, 'mass', units)} dry`}
        />
        <Figure value={formatQuantity(total.water, 'mass', units)} what="mixing water" />
        <Figure
          value={money(cost.total)}
          what={`of it per ${units === 'metric' ? 'm²' : 'm² (10.8 ft²)'} of wall face: ${money(cost.perWallFace)}`}
        />
        <Figure value={formatQuantity(wallFace, 'area', units)} what="wall face" />
      </Group>
      <Group align="start" gap="lg" grow preventGrowOverflow={false}>
        <section className="sheet">
          <h2>By day</h2>
          <Table>
            <Table.Thead>
              <Table.Tr>
                {['Date', 'Concrete', 'Bead', 'Bags', 'Water', 'Printing'].map(head => (
                  <Table.Th key={head}>{head}</Table.Th>
                ))}
              </Table.Tr>
            </Table.Thead>
            <Table.Tbody>
              {byDay.map(day => (
                <Table.Tr key={day.date}>
                  <Table.Td>{day.date}</Table.Td>
                  <Table.Td>{formatQuantity(day.volume, 'volume', units)}</Table.Td>
                  <Table.Td>{formatQuantity(day.beadLength, 'length', units)}</Table.Td>
                  <Table.Td>{day.bags}</Table.Td>
                  <Table.Td>{formatQuantity(day.water, 'mass', units)}</Table.Td>
                  <Table.Td>{(day.printTime / 3600).toFixed(1)} h</Table.Td>
                </Table.Tr>
              ))}
            </Table.Tbody>
          </Table>
        </section>
        <section className="sheet">
          <h2>Cost</h2>
          <Table>
            <Table.Tbody>
              {cost.lines.map(line => (
                <Table.Tr key={line.what}>
                  <Table.Th scope="row">{line.what}</Table.Th>
                  <Table.Td style={{ textAlign: 'right' }}>
                    <OpenNumber behind={{ how: line.how, source: "the job's own rates" }}>
                      {money(line.amount)}
                    </OpenNumber>
                  </Table.Td>
                </Table.Tr>
              ))}
              <Table.Tr>
                <Table.Th scope="row">Total</Table.Th>
                <Table.Td style={{ textAlign: 'right' }}>
                  <strong>{money(cost.total)}</strong>
                </Table.Td>
              </Table.Tr>
            </Table.Tbody>
          </Table>
        </section>
      </Group>
    </>
  )
}
