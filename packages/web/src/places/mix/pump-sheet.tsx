import type { Plan } from '@dawnlift/core/plan'
import { checkPumping, linePressure } from '@dawnlift/core/pump'
import { formatQuantity } from '@dawnlift/core/quantity'
import { beadArea } from '@dawnlift/core/wall'
import { Caution, Figure, OpenNumber } from '../../parts/index.js'
import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'
import { JobField } from '../fields/index.js'
import { batchingFields } from '../site/site-fields.js'

const { pumping } = words

/** Can this pump push this mix through this hose: pressure, grain and time, at the campaign's highest nozzle. */
export function PumpSheet({ plan }: { readonly plan: Plan }) {
  const units = useApp(state => state.units)
  const { job, campaign } = plan
  const lifts = campaign.days.flatMap(day => day.lifts)
  const rise = Math.max(0, ...lifts.map(lift => lift.lastLayer)) * job.print.layerHeight
  const flow = beadArea(job.print.beadWidth, job.print.layerHeight) * job.print.speed
  const printed = campaign.hours.filter(hour =>
    lifts.some(lift => lift.start < hour.start + 3600 && lift.end > hour.start),
  )
  const temperature = Math.max(job.mix.reference, ...printed.map(hour => hour.mixTemperature))
  const line = { machine: job.machine, mix: job.mix, batching: job.batching, flow, rise, temperature }
  const { slipping, shearing } = linePressure(line)
  const bar = (pascals: number) =>
    units === 'metric'
      ? formatQuantity(pascals, 'pressure', units, { unit: 'bar', step: 0.1 })
      : formatQuantity(pascals, 'pressure', units, { unit: 'psi', step: 1 })
  return (
    <section className="sheet" aria-labelledby="pump-title">
      <h2 id="pump-title">{pumping.title}</h2>
      <div className="figures">
        <Figure
          value={
            <OpenNumber
              behind={{
                how: words.how.pressure,
                inputs: [
                  [pumping.flow, formatQuantity(flow, 'flow', units)],
                  [pumping.rise, formatQuantity(rise, 'length', units)],
                  [
                    pumping.hose,
                    pumping.hoseOf(
                      formatQuantity(job.batching.hoseLength, 'length', units),
                      formatQuantity(job.batching.hoseDiameter, 'length', units),
                    ),
                  ],
                  [pumping.sheared, bar(shearing)],
                ],
                source: '[Kaplan2000], [Buckingham1921]',
                caution: words.hoseCaution,
              }}
            >
              {bar(slipping)}
            </OpenNumber>
          }
          what={pumping.gives(bar(job.machine.pump.pressureMost))}
        />
        <Figure value={formatQuantity(flow, 'flow', units)} what={pumping.through} />
      </div>
      <ul className="findings">
        {checkPumping({ ...line, units }).map(finding => (
          <li key={finding.check}>
            <strong className={finding.verdict === 'fail' ? 'limit' : ''}>
              {words.verdicts[finding.verdict]}
            </strong>
            : {finding.say} <span className="soft">({finding.source})</span>
          </li>
        ))}
      </ul>
      {batchingFields
        .filter(field => /hose|water/i.test(field.path.join('.')))
        .map(field => (
          <JobField key={field.path.join('.')} field={field} />
        ))}
      <Caution>{words.hoseCaution}</Caution>
    </section>
  )
}
