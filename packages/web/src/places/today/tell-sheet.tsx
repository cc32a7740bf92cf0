import type { Plan } from '@dawnlift/core/plan'
import { toldFile, writeTold } from '@dawnlift/formats/site-log'
import { Button } from '@mantine/core'
import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'

/** Who has to be told what of the days to come, until somebody says that they were. */
export function TellSheet({ plan }: { readonly plan: Plan }) {
  const hasTold = useApp(state => state.files?.beside[toldFile] !== undefined)
  const { soFar, campaign } = plan
  if (!soFar) return null
  const { tell } = words
  const keep = () => {
    const { files, edit } = useApp.getState()
    const told = new TextEncoder().encode(writeTold(campaign, soFar.now))
    if (files) edit(files.document, { [toldFile]: told })
  }
  return (
    <section className="sheet gloves" aria-labelledby="tell-title">
      <h2 id="tell-title">{tell.title}</h2>
      {soFar.changes.length === 0 ? (
        <p>{tell.none}</p>
      ) : (
        <>
          <ul>
            {soFar.changes.map(({ who, ref, kind, say }) => (
              <li key={`${who} ${ref} ${kind} ${say}`}>
                <strong>{who}</strong> {say}
              </li>
            ))}
          </ul>
          <p>
            <Button onClick={keep}>{tell.done}</Button> <span className="soft">{tell.hint}</span>
          </p>
        </>
      )}
      {!hasTold && <p className="soft">{tell.byPlan}</p>}
    </section>
  )
}
