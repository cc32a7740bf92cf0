import type { Plan } from '@dawnlift/core/plan'
import { formatQuantity } from '@dawnlift/core/quantity'
import type { Tally } from '@dawnlift/core/tally'
import { Figure, OpenNumber, WithPlan } from '../../parts/index.js'
import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'
import { dayText } from '../days/day-text.js'
import { JobField } from '../fields/index.js'
import { moneyIn } from '../money.js'
import { Quiet } from '../quiet.js'
import { Scroller } from '../scroller.js'
import { Downloads } from './downloads.js'
import { rateFields } from './rate-fields.js'

const { counted } = words

/** What the job takes and what it costs, by day and by line. */
export const TallyPlace = () => <WithPlan>{plan => <Counted plan={plan} />}</WithPlan>

function Counted({ plan }: { readonly plan: Plan }) {
  return (
    <>
      <Quiet>{words.quiet.tally}</Quiet>
      <Totals plan={plan} />
      <div className="columns">
        <div className="stack">
          <ByDay tally={plan.tally} />
          <Downloads plan={plan} />
        </div>
        <div className="stack">
          <Cost tally={plan.tally} />
          <details className="sheet">
            <summary>
              <h2>{counted.rates(plan.tally.cost.currency)}</h2>
            </summary>
            {rateFields.map(field => (
              <JobField key={field.path.join('.')} field={field} />
            ))}
          </details>
        </div>
      </div>
    </>
  )
}

function Totals({ plan }: { readonly plan: Plan }) {
  const units = useApp(state => state.units)
  const { total, cost, wallFace, waste } = plan.tally
  const { mix } = plan.job
  const money = moneyIn(cost.currency)
  const mass = (kilograms: number) => formatQuantity(kilograms, 'mass', units, { step: 1 })
  const perFace = units === 'metric' ? cost.perWallFace : cost.perWallFace / 10.7639
  const perFaceUsual = plan.job.costs.conventionalPerSquareMetre / (units === 'metric' ? 1 : 10.7639)
  const area = units === 'metric' ? 'm²' : 'ft²'
  return (
    <div className="figures">
      <Figure
        value={
          <OpenNumber
            behind={{
              how: counted.concreteHow,
              inputs: [
                [
                  counted.bead,
                  `${formatQuantity(plan.job.print.beadWidth, 'length', units)} × ${formatQuantity(plan.job.print.layerHeight, 'length', units)}`,
                ],
                [counted.length, formatQuantity(total.beadLength, 'length', units)],
              ],
              source: counted.geometry,
            }}
          >
            {formatQuantity(total.volume, 'volume', units, { step: 0.1 })}
          </OpenNumber>
        }
        what={counted.concrete}
      />
      {waste && (
        <Figure
          value={
            <OpenNumber behind={{ how: waste.how, source: counted.practice }}>
              {formatQuantity(waste.volume, 'volume', units, { step: 0.1 })}
            </OpenNumber>
          }
          what={counted.waste}
        />
      )}
      <Figure
        value={
          <OpenNumber
            behind={{
              how: counted.bagsHow,
              inputs: [
                [counted.density, formatQuantity(mix.density, 'density', units)],
                [counted.ratio, formatQuantity(mix.waterRatio, 'share', units)],
                [counted.bag, mass(mix.bag)],
              ],
              source: mix.provenance === 'default' ? counted.defaultMix : mix.provenance,
            }}
          >
            {Math.ceil(total.bags).toLocaleString('en-GB')}
          </OpenNumber>
        }
        what={counted.bags(mass(total.dry))}
      />
      <Figure value={mass(total.water)} what={counted.water} />
      <Figure
        value={
          <OpenNumber
            behind={{
              how: counted.perFaceHow,
              inputs: [
                [counted.face, formatQuantity(wallFace, 'area', units, { step: 1 })],
                [counted.allCost, money(cost.total)],
                [counted.usual, counted.perArea(money(perFaceUsual), area)],
              ],
              source: counted.ownRates,
            }}
          >
            {money(perFace)}
          </OpenNumber>
        }
        what={counted.perFace(area)}
      />
      <Figure value={money(cost.total)} what={counted.inAll} />
    </div>
  )
}

function ByDay({ tally }: { readonly tally: Tally }) {
  const units = useApp(state => state.units)
  const most = Math.max(1, ...tally.byDay.map(day => day.bags))
  return (
    <section className="sheet" aria-labelledby="byday-title">
      <h2 id="byday-title">{counted.byDay}</h2>
      <Scroller label={counted.days}>
        <table className="plain wide ruled">
          <thead>
            <tr>
              {counted.heads.map(head => (
                <th key={head} scope="col" aria-label={head || counted.bar}>
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {tally.byDay.map(day => (
              <tr key={day.date}>
                <th scope="row">{dayText(day.date)}</th>
                <td className="right">{Math.ceil(day.bags)}</td>
                <td>
                  <span className="bar" style={{ width: `${(day.bags / most) * 120}px` }} />
                </td>
                <td className="right">{formatQuantity(day.volume, 'volume', units, { step: 0.01 })}</td>
                <td className="right">
                  {formatQuantity(day.beadLength, 'length', units, {
                    unit: units === 'metric' ? 'm' : 'ft',
                    step: 1,
                  })}
                </td>
                <td className="right">{formatQuantity(day.water, 'mass', units, { step: 1 })}</td>
                <td className="right">{counted.hours((day.printTime / 3600).toFixed(1))}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroller>
    </section>
  )
}

function Cost({ tally }: { readonly tally: Tally }) {
  const { cost } = tally
  const money = moneyIn(cost.currency)
  return (
    <section className="sheet" aria-labelledby="cost-title">
      <h2 id="cost-title">{counted.cost}</h2>
      <table className="plain wide ruled">
        <tbody>
          {cost.lines.map(line => (
            <tr key={line.what}>
              <th scope="row">
                {line.what}
                <br />
                <span className="soft">{line.how}</span>
              </th>
              <td className="right">
                <OpenNumber
                  behind={{
                    how: line.how,
                    inputs: [
                      [counted.share, counted.percent(Math.round((100 * line.amount) / (cost.total || 1)))],
                    ],
                    source: counted.ownRates,
                  }}
                >
                  {money(line.amount)}
                </OpenNumber>
              </td>
            </tr>
          ))}
          <tr>
            <th scope="row">{counted.sum}</th>
            <td className="right">
              <strong>{money(cost.total)}</strong>
            </td>
          </tr>
        </tbody>
      </table>
    </section>
  )
}
