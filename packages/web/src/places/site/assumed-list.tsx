import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'

/** Everything the job did not say and the plan rests on all the same. */
export function AssumedList() {
  const assumed = useApp(state => state.assumed)
  if (assumed.length === 0) return null
  return (
    <details className="sheet">
      <summary>
        <h2>{words.site.assumed(assumed.length)}</h2>
      </summary>
      <table className="rules">
        <thead>
          <tr>
            {words.site.assumedHeads.map(head => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {assumed.map(({ at, value, source, why }) => (
            <tr key={at}>
              <th scope="row">
                <code>{at}</code>
              </th>
              <td>{value}</td>
              <td>
                {why} <span className="soft">({source})</span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  )
}
