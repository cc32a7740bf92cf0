import { clockText } from '@dawnlift/core/clock'
import type { Plan } from '@dawnlift/core/plan'
import { formatQuantity } from '@dawnlift/core/quantity'
import type { Call } from '@dawnlift/core/trade'
import { Button, Group, SegmentedControl, Table } from '@mantine/core'
import { useState } from 'react'
import { WithPlan } from '../../parts/index.js'
import { useApp } from '../../state/index.js'

/** Who has to be at which wall when: every call, by trade, in the order of the clock. */
export const TradesPlace = () => <WithPlan>{plan => <Calls plan={plan} />}</WithPlan>

const everyone = 'everyone'

function Calls({ plan }: { readonly plan: Plan }) {
  const [trade, setTrade] = useState(everyone)
  const trades = [...new Set(plan.calls.map(call => call.trade))].sort()
  const shown = [...plan.calls]
    .sort((a, b) => a.from - b.from)
    .filter(call => trade === everyone || call.trade === trade)
  return (
    <>
      <Group justify="space-between" mb="md">
        <SegmentedControl
          aria-label="Trade"
          value={trade}
          onChange={setTrade}
          data={[
            { value: everyone, label: `Everyone (${plan.calls.length})` },
            ...trades.map(each => ({ value: each, label: each })),
          ]}
        />
        {trade !== everyone && (
          <Group gap="xs">
            <Button
              component="a"
              variant="default"
              href={`/api/out/sheets/trade-${trade}.pdf`}
              target="_blank"
            >
              Sheet
            </Button>
            <Button component="a" variant="default" href={`/api/out/calendars/${trade}.ics`}>
              Calendar
            </Button>
          </Group>
        )}
      </Group>
      <Table striped highlightOnHover stickyHeader>
        <Table.Thead>
          <Table.Tr>
            {['Date', 'At the wall', 'Call', 'Lift', 'Layers', 'Can be cut', 'Where', 'Tool', 'Proof'].map(
              head => (
                <Table.Th key={head}>{head}</Table.Th>
              ),
            )}
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>
          {shown.map(call => (
            <CallRow key={`${call.id} ${call.from}`} call={call} zone={plan.job.site.timeZone} />
          ))}
        </Table.Tbody>
      </Table>
    </>
  )
}

function CallRow({ call, zone }: { readonly call: Call; readonly zone: string }) {
  const units = useApp(state => state.units)
  const length = (metres: number) => formatQuantity(metres, 'length', units)
  return (
    <Table.Tr>
      <Table.Td>{call.date}</Table.Td>
      <Table.Td>
        {clockText(call.from, zone)}–{clockText(call.until, zone)}
      </Table.Td>
      <Table.Td>
        <strong>{call.id}</strong> {call.what}
      </Table.Td>
      <Table.Td>{call.lift}</Table.Td>
      <Table.Td>
        {call.layerIn}–{call.layerOut}
      </Table.Td>
      <Table.Td>
        {call.cut ? `${clockText(call.cut.from, zone)}–${clockText(call.cut.until, zone)}` : '—'}
      </Table.Td>
      <Table.Td>
        wall {call.wall}, {length(call.place.along)} from {call.place.from}, {length(call.place.up)} up,{' '}
        {call.place.face}
      </Table.Td>
      <Table.Td>{call.tool}</Table.Td>
      <Table.Td>{call.proof}</Table.Td>
    </Table.Tr>
  )
}
