import type { Lift } from '@dawnlift/core/campaign'
import type { Plan } from '@dawnlift/core/plan'
import { formatQuantity } from '@dawnlift/core/quantity'
import type { Result } from '@dawnlift/core/result'
import type { SectionAnswer, SectionBuckling } from '@dawnlift/core/stand'
import { figure } from '@dawnlift/drawing/paper'
import { drawModeShape } from '@dawnlift/drawing/views'
import { Button } from '@mantine/core'
import { useEffect, useMemo, useRef } from 'react'
import { Caution, Figure, OpenNumber, Picture } from '../../parts/index.js'
import { askShells, stopAsking, useApp } from '../../state/index.js'
import { words } from '../../words/index.js'
import { Asking, useAsked } from '../asking.js'
import { sheetWords } from '../sheet-words.js'

interface Parts {
  readonly lift: Lift
  readonly plan: Plan
}

/** The chosen lift as a whole section of shells, when somebody asks: how far it is from buckling, and where. */
export function ShellSheet({ lift, plan }: Parts) {
  const { answer, asking, ask } = useAsked<Result<SectionAnswer>>(plan)
  const { shells } = words
  const isAsking = useRef(false)
  isAsking.current = asking !== undefined
  // Nobody waits for the answer once another lift is chosen.
  useEffect(
    () => () => {
      if (isAsking.current) stopAsking()
    },
    [],
  )
  return (
    <section className="sheet" aria-labelledby="shells-title">
      <h2 id="shells-title">{shells.title(lift.id)}</h2>
      {!answer && !asking && (
        <p>
          <Button variant="default" onClick={() => ask(progress => askShells(lift.id, progress))}>
            {shells.start}
          </Button>{' '}
          <span className="soft">{shells.hint}</span>
        </p>
      )}
      <Asking asking={asking} what={shells.working} />
      {answer && <Answer answer={answer} lift={lift} plan={plan} />}
    </section>
  )
}

function Answer({ answer, ...parts }: Parts & { readonly answer: Result<SectionAnswer> }) {
  if (!answer.ok)
    return (
      <p className="limit" role="alert">
        {answer.problems.map(({ say }) => say).join(' ')}
      </p>
    )
  return (
    <>
      {answer.value.kind === 'buckles' ? (
        <Buckles buckling={answer.value.buckling} {...parts} />
      ) : (
        <p role="status">{words.shells.none}</p>
      )}
      <Caution>{words.shells.caution}</Caution>
    </>
  )
}

function Buckles({ buckling, lift, plan }: Parts & { readonly buckling: SectionBuckling }) {
  const units = useApp(state => state.units)
  const { shells } = words
  const drawing = useMemo(
    () => drawModeShape({ job: plan.job, lift, buckling }, figure(170, 110, sheetWords(plan))),
    [plan, lift, buckling],
  )
  const { mix, rules } = plan.job
  const { inputs } = shells
  return (
    <>
      <div className="figures">
        <Figure
          value={
            <OpenNumber
              behind={{
                how: shells.how,
                inputs: [
                  [inputs.lift, `${lift.id}, section ${lift.section}`],
                  [inputs.layers, `${lift.firstLayer}–${lift.lastLayer}`],
                  [inputs.temperature, shells.byClock],
                  [inputs.mix, `${mix.name}, ${mix.provenance}`],
                  [inputs.unknowns, String(buckling.unknowns)],
                  [inputs.asked, rules.standSafety.value.toFixed(2)],
                  [inputs.planned, lift.safety.toFixed(2)],
                ],
                source: shells.source,
                caution: shells.caution,
              }}
            >
              {buckling.factor.toFixed(2)}
            </OpenNumber>
          }
          what={shells.factor}
        />
        <Figure value={buckling.quick.factor.toFixed(2)} what={shells.strips} />
        <Figure value={formatQuantity(buckling.where.height, 'length', units)} what={shells.height} />
      </div>
      <p role="status">{buckling.say}</p>
      <Picture drawing={drawing} label={shells.picture(lift.id)} />
    </>
  )
}
