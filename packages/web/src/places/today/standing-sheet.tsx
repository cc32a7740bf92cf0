import { clockText, localTime } from '@dawnlift/core/clock'
import type { Plan } from '@dawnlift/core/plan'
import { words } from '../../words/index.js'
import { dayText } from '../days/day-text.js'

/** How high every section stands by the log, and what the nozzle stood still for. */
export function StandingSheet({ plan }: { readonly plan: Plan }) {
  const { stands } = words
  const { soFar } = plan
  const moment = (at: number) => {
    const zone = plan.job.site.timeZone
    return `${dayText(localTime(at, zone).date)} ${clockText(at, zone)}`
  }
  return (
    <section className="sheet" aria-labelledby="stands-title">
      <h2 id="stands-title">{stands.title}</h2>
      <p className="soft">{soFar ? stands.asOf(moment(soFar.now)) : stands.nothing}</p>
      {soFar && (
        <table className="plain wide">
          <thead>
            <tr>
              {stands.heads.map(head => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {plan.sections.map(({ id }, index) => {
              const at = soFar.standing.find(each => each.section === id)
              const all = plan.bands[index]?.layers ?? 0
              return (
                <tr key={id}>
                  <th scope="row">{id}</th>
                  <td className="nowrap">{stands.of(at?.layers ?? 0, all)}</td>
                  <td className="up">
                    <span className="bar" style={{ width: `${(100 * (at?.layers ?? 0)) / (all || 1)}%` }} />
                  </td>
                  <td className="nowrap">{at?.lastEnd === undefined ? '·' : moment(at.lastEnd)}</td>
                </tr>
              )
            })}
          </tbody>
        </table>
      )}
      {soFar && soFar.lost.length > 0 && (
        <>
          <h3>{stands.lost}</h3>
          <ul>
            {soFar.lost.map(({ cause, times, seconds }) => (
              <li key={cause}>{stands.lostRow(cause, times, Math.round(seconds / 60))}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  )
}
