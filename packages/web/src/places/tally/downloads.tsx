import type { Plan } from '@dawnlift/core/plan'
import { useEffect, useState } from 'react'
import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'

interface Listed {
  readonly name: string
  readonly title: string
}

/** Every file the plan gives, from the local server, by what it is for. */
export function Downloads({ plan }: { readonly plan: Plan }) {
  const [listed, setListed] = useState<readonly Listed[]>()
  const [away, setAway] = useState(false)
  // biome-ignore lint/correctness/useExhaustiveDependencies: another plan gives other files
  useEffect(() => {
    const end = new AbortController()
    setAway(false)
    fetch('/api/out', { signal: end.signal })
      .then(async answer => setListed(answer.ok ? ((await answer.json()) as readonly Listed[]) : []))
      .catch(() => {
        if (!end.signal.aborted) setAway(true)
      })
    return () => end.abort()
  }, [plan])
  // The server speaks of its own job, not of one that lives in this tab alone.
  const isServed = useApp(state => state.revision !== undefined)
  const folders = [...new Set((listed ?? []).map(folderOf))]
  return (
    <section className="sheet" aria-labelledby="files-title">
      <h2 id="files-title">{words.counted.files}</h2>
      {(away || !isServed) && <p className="soft">{isServed ? words.noDownloads : words.tabDownloads}</p>}
      {!away && isServed && !listed && <p className="soft">{words.planning} …</p>}
      {isServed &&
        folders.map(folder => (
          <details key={folder} open={folder === 'tables'}>
            <summary>{words.folders[folder as keyof typeof words.folders] ?? folder}</summary>
            <ul className="downloads">
              {(listed ?? [])
                .filter(each => folderOf(each) === folder)
                .map(({ name, title }) => (
                  <li key={name}>
                    <a href={`/api/out/${name}`} download>
                      {title}
                    </a>{' '}
                    <span className="soft">{name.split('/').at(-1)}</span>
                  </li>
                ))}
            </ul>
          </details>
        ))}
    </section>
  )
}

const folderOf = ({ name }: Listed): string => (name.includes('/') ? name.split('/')[0]! : 'other')
