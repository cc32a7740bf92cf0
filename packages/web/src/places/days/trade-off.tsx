import type { Aim } from '@dawnlift/core/job'
import type { Way } from '@dawnlift/core/lever'
import type { Plan } from '@dawnlift/core/plan'
import type { JobEdit, RawJob } from '@dawnlift/document/job'
import { figure } from '@dawnlift/drawing/paper'
import { drawTradeOff, tradeOffRows } from '@dawnlift/drawing/views'
import { Button, Group, SegmentedControl } from '@mantine/core'
import { useMemo, useState } from 'react'
import { Caution, Picture } from '../../parts/index.js'
import { askTradeOffs } from '../../state/index.js'
import { words } from '../../words/index.js'
import { Asking, useAsked } from '../asking.js'
import { moneyIn } from '../money.js'
import { Scroller } from '../scroller.js'
import { sheetWords } from '../sheet-words.js'
import { dayText } from './day-text.js'
import { writeEdits } from './pin-edits.js'

/** What waiting would buy: the ways to run the campaign by finish, cost and calm; one of them chosen for the job. */
export function TradeOffSheet({ plan }: { readonly plan: Plan }) {
  const { answer, asking, ask } = useAsked<readonly Way[]>(plan)
  const { tradeOff } = words
  return (
    <section className="sheet" aria-labelledby="trade-off-title">
      <h2 id="trade-off-title">{tradeOff.title}</h2>
      {!answer && !asking && (
        <p>
          <Button onClick={() => ask(askTradeOffs)}>{tradeOff.start}</Button>{' '}
          <span className="soft">{tradeOff.hint}</span>
        </p>
      )}
      <Asking asking={asking} what={tradeOff.working} />
      {answer && <Weighed ways={answer} plan={plan} />}
    </section>
  )
}

function Weighed({ ways, plan }: { readonly ways: readonly Way[]; readonly plan: Plan }) {
  const { tradeOff } = words
  const { currency } = plan.job.costs
  const drawing = useMemo(() => {
    const rows = tradeOffRows(ways, way => ({ name: nameOf(way), calmSay: tradeOff.lifts(way.lifts) }))
    return drawTradeOff({ job: plan.job.name, currency, rows }, figure(128, 76, sheetWords(plan)))
  }, [ways, plan, currency])
  if (ways.length === 0) return <p role="status">{tradeOff.none}</p>
  return (
    <>
      {ways.length === 1 && <p role="status">{tradeOff.alone}</p>}
      {ways.length > 1 && <Picture drawing={drawing} label={tradeOff.picture} />}
      <Scroller label={tradeOff.title}>
        <table className="plain wide ruled figured">
          <thead>
            <tr>
              {tradeOff.heads(currency).map(head => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {ways.map(way => (
              <WayRow key={`${way.aim} ${way.date} ${way.cost} ${way.lifts}`} way={way} plan={plan} />
            ))}
          </tbody>
        </table>
      </Scroller>
      <Aims plan={plan} />
      <p className="soft">{tradeOff.measure}</p>
      {plan.soFar && <p className="soft">{words.ofWhatIsLeft}</p>}
      <Caution>{tradeOff.caution}</Caution>
    </>
  )
}

/** By the aim it answers; a way that no aim leads to was the best found of its kind up to its day. */
function nameOf({ aim, ledToBy }: Way): string {
  const { aims, byThen } = words.tradeOff
  return ledToBy.length > 0 ? ledToBy.map(each => aims[each]).join(', ') : byThen(aims[aim])
}

function WayRow({ way, plan }: { readonly way: Way; readonly plan: Plan }) {
  const { tradeOff } = words
  return (
    <tr className={way.isPlanned ? 'standing-row' : way.isWorthwhile ? '' : 'beaten'}>
      <th scope="row">
        {nameOf(way)}
        {way.isPlanned && <span className="soft"> {tradeOff.planned}</span>}
        {!way.isWorthwhile && <span className="soft"> {tradeOff.beaten}</span>}
      </th>
      <td className="nowrap">{dayText(way.date)}</td>
      <td className="nowrap">{moneyIn(plan.job.costs.currency)(way.cost)}</td>
      <td>{way.printDays}</td>
      <td>{way.lifts}</td>
      <td>{way.safety.toFixed(2)}</td>
    </tr>
  )
}

/** What counts first in the job. The plan is made anew when another is chosen. */
function Aims({ plan }: { readonly plan: Plan }) {
  const [wrong, setWrong] = useState<string>()
  const { aims, first } = words.tradeOff
  const now = plan.job.aim ?? 'soonest'
  const choose = async (aim: Aim) => {
    const problems = await writeEdits(raw => aimEdits(raw, aim))
    setWrong(problems.length > 0 ? problems.map(each => each.say).join(' ') : undefined)
  }
  return (
    <Group gap="sm" my="sm">
      <span>{first}</span>
      <SegmentedControl
        aria-label={first}
        value={now}
        onChange={value => void choose(value as Aim)}
        data={(['soonest', 'cheapest', 'calmest'] as const).map(value => ({ value, label: aims[value] }))}
      />
      {wrong && (
        <span className="limit" role="alert">
          {wrong}
        </span>
      )}
    </Group>
  )
}

/** The soonest counts first in a job that says nothing. */
const aimEdits = ({ aim: written }: RawJob, aim: Aim): readonly JobEdit[] =>
  aim !== 'soonest'
    ? [{ kind: 'set', path: ['aim'], value: aim }]
    : written === undefined
      ? []
      : [{ kind: 'remove', path: ['aim'] }]
