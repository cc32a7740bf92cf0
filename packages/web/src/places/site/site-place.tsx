import type { Plan } from '@dawnlift/core/plan'
import { figure } from '@dawnlift/drawing/paper'
import { drawSeason } from '@dawnlift/drawing/views'
import { useMemo } from 'react'
import { Picture, ProblemList } from '../../parts/index.js'
import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'
import { JobField } from '../fields/index.js'
import { Quiet } from '../quiet.js'
import { sheetWords } from '../sheet-words.js'
import { AssumedList } from './assumed-list.js'
import { Findings } from './findings.js'
import { RuleTable } from './rule-table.js'
import { batchingFields, type FieldGroup, siteFields } from './site-fields.js'
import { Weather } from './weather.js'

/**
 * Where it stands, who prints, with what, under which rules, and in what weather.
 * Everything here is written in the job, so it stays open for mending while the job cannot be planned.
 */
export function SitePlace() {
  const plan = useApp(state => state.plan)
  const problems = useApp(state => state.problems)
  const files = useApp(state => state.files)
  if (!files) return <p className="inner soft">{words.noPlanYet}</p>
  return (
    <div className="inner">
      <Quiet>{words.quiet.site}</Quiet>
      {problems.length > 0 && <ProblemList problems={problems} />}
      {plan && <Findings plan={plan} />}
      <section className="sheet" aria-labelledby="weather-title">
        <h2 id="weather-title">{words.site.season}</h2>
        {plan && <Season plan={plan} />}
        <Weather />
      </section>
      <div className="columns">
        <div className="stack">
          {siteFields.map(group => (
            <Group key={group.title} group={group} />
          ))}
          <Group group={{ title: words.site.batching, fields: batchingFields }} />
        </div>
        <div className="stack">
          <RuleTable />
          <AssumedList />
        </div>
      </div>
    </div>
  )
}

const Group = ({ group }: { readonly group: FieldGroup }) => (
  <section className="sheet" aria-label={group.title}>
    <h2>{group.title}</h2>
    {group.fields.map(field => (
      <JobField key={field.path.join('.')} field={field} />
    ))}
  </section>
)

/** As many days as the strip shows legibly. */
const stripDays = 120

function Season({ plan }: { readonly plan: Plan }) {
  const season = useMemo(
    () =>
      drawSeason(
        { job: plan.job, hours: plan.campaign.hours.slice(0, 24 * stripDays) },
        figure(230, 74, sheetWords(plan)),
      ),
    [plan],
  )
  return <Picture drawing={season} label={words.site.seasonPicture} />
}
