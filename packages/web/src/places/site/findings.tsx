import type { Plan } from '@dawnlift/core/plan'
import type { Finding } from '@dawnlift/core/result'
import { useLocation } from 'wouter'
import { Caution } from '../../parts/index.js'
import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'
import { whereToMend } from './where-to.js'

const order = { fail: 0, 'outside-range': 1, warn: 2, pass: 3 } as const
const shownAtOnce = 6

/** What the checks found, worst first; a touch goes to where it is mended. */
export function Findings({ plan }: { readonly plan: Plan }) {
  const shown = plan.findings
    .filter(finding => finding.verdict !== 'pass')
    .sort((a, b) => order[a.verdict] - order[b.verdict])
  if (shown.length === 0) return null
  const [first, rest] = [shown.slice(0, shownAtOnce), shown.slice(shownAtOnce)]
  return (
    <section className="sheet" aria-labelledby="findings-title">
      <h2 id="findings-title">{words.findings(shown.length)}</h2>
      <FindingRows findings={first} plan={plan} />
      {rest.length > 0 && (
        <details>
          <summary>{words.site.more(rest.length)}</summary>
          <FindingRows findings={rest} plan={plan} />
        </details>
      )}
      <Caution>{words.caution}</Caution>
    </section>
  )
}

function FindingRows({ findings, plan }: { readonly findings: readonly Finding[]; readonly plan: Plan }) {
  const [, go] = useLocation()
  const lifts = new Set(plan.campaign.days.flatMap(day => day.lifts).map(lift => lift.id))
  const mend = (finding: Finding) => {
    const { place, select } = whereToMend(finding, plan.job, lifts)
    if (select) useApp.getState().select(select)
    go(`/${place}`)
  }
  return (
    <ul className="findings">
      {findings.map((finding, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the same check may say the same of one place at two layers
        <li key={`${index} ${finding.check} ${finding.at}`}>
          <button type="button" className="finding" onClick={() => mend(finding)}>
            <strong className={finding.verdict === 'fail' ? 'limit' : ''}>
              {words.verdicts[finding.verdict]}, {finding.at}
            </strong>{' '}
            {finding.say} <span className="soft">({finding.source})</span>
          </button>
        </li>
      ))}
    </ul>
  )
}
