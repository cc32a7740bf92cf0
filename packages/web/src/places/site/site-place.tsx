import { Group, Table } from '@mantine/core'
import { formatClock, formatQuantity } from '@dawnlift/core/quantity'
import type { Plan } from '@dawnlift/core/plan'
import { figure } from '@dawnlift/drawing/paper'
import { drawSeason } from '@dawnlift/drawing/views'
import { useMemo } from 'react'
import { Picture, WithPlan } from '../../parts/index.js'
import { useApp } from '../../state/index.js'
import { sheetWords } from '../sheet-words.js'

/** Where it stands, who prints, with what, under which rules, and in what weather. */
export const SitePlace = () => <WithPlan>{plan => <Site plan={plan} />}</WithPlan>

function Site({ plan }: { readonly plan: Plan }) {
  const { job } = plan
  const units = useApp(state => state.units)
  const season = useMemo(() => drawSeason({ job, hours: plan.campaign.hours.slice(0, 24 * 60) }, figure(300, 90, sheetWords(plan))), [plan, job])
  return (
    <>
      <section className="sheet">
        <h2>The season, hour by hour</h2>
        <Picture drawing={season} label="Each day of the season a column, each hour a cell: open, or shut with its reason" />
      </section>
      <Group align="start" gap="lg" grow preventGrowOverflow={false} mt="md">
        <section className="sheet">
          <h2>Place and crew</h2>
          <Facts
            rows={[
              ['Place', job.site.name],
              ['Position', `${Math.abs(job.site.latitude).toFixed(3)}° ${job.site.latitude >= 0 ? 'N' : 'S'}, ${Math.abs(job.site.longitude).toFixed(3)}° ${job.site.longitude >= 0 ? 'E' : 'W'}`],
              ['Elevation', formatQuantity(job.site.elevation, 'length', units)],
              ['Time zone', job.site.timeZone],
              ['First day', job.calendar.firstDay],
              ['Day', `${formatClock(job.crew.dayStart)} to ${formatClock(job.crew.dayEnd)}`],
              ['Crew', `${job.crew.size} people, at most ${(job.crew.longestShift / 3600).toFixed(1)} h a shift`],
              ['Machine', job.machine.name],
              ['Bead', `${formatQuantity(job.print.beadWidth, 'length', units)} × ${formatQuantity(job.print.layerHeight, 'length', units)}`],
            ]}
          />
        </section>
        <section className="sheet">
          <h2>Rules, with where they come from</h2>
          <RuleTable plan={plan} />
        </section>
      </Group>
      <Findings plan={plan} />
    </>
  )
}

const Facts = ({ rows }: { readonly rows: readonly (readonly [string, string])[] }) => (
  <Table>
    <Table.Tbody>
      {rows.map(([name, value]) => (
        <Table.Tr key={name}>
          <Table.Th scope="row">{name}</Table.Th>
          <Table.Td>{value}</Table.Td>
        </Table.Tr>
      ))}
    </Table.Tbody>
  </Table>
)

function RuleTable({ plan }: { readonly plan: Plan }) {
  return (
    <Table>
      <Table.Tbody>
        {Object.entries(plan.job.rules).map(([name, rule]) => (
          <Table.Tr key={name}>
            <Table.Th scope="row">{name.replace(/[A-Z]/g, letter => ` ${letter.toLowerCase()}`)}</Table.Th>
            <Table.Td style={{ textAlign: 'right' }}>{Number(rule.value.toPrecision(4))}</Table.Td>
            <Table.Td className="soft">{rule.source}</Table.Td>
          </Table.Tr>
        ))}
      </Table.Tbody>
    </Table>
  )
}

/** What the checks found, worst first. */
function Findings({ plan }: { readonly plan: Plan }) {
  const order = { fail: 0, 'outside-range': 1, warn: 2, pass: 3 }
  const shown = plan.findings.filter(finding => finding.verdict !== 'pass').sort((a, b) => order[a.verdict] - order[b.verdict])
  if (shown.length === 0) return null
  return (
    <section className="sheet" style={{ marginTop: '1rem' }}>
      <h2>To look at</h2>
      <ul>
        {shown.map(finding => (
          <li key={`${finding.check} ${finding.at} ${finding.say}`} className={finding.verdict === 'fail' ? 'limit' : ''}>
            <strong>{finding.at}</strong>: {finding.say} <span className="soft">({finding.source})</span>
          </li>
        ))}
      </ul>
    </section>
  )
}
