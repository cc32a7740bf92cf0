import { useApp } from '../../state/index.js'

/** Everything the job did not say and the plan rests on all the same. */
export function AssumedList() {
  const assumed = useApp(state => state.assumed)
  if (assumed.length === 0) return null
  return (
    <details className="sheet">
      <summary>
        <h2>{assumed.length} values are assumed, the job says nothing of them</h2>
      </summary>
      <table className="rules">
        <thead>
          <tr>
            <th scope="col">place in the job</th>
            <th scope="col">taken</th>
            <th scope="col">why</th>
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
