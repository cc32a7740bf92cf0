import { Button, Group, Progress } from '@mantine/core'
import { useHotkeys } from '@mantine/hooks'
import { Suspense, useEffect } from 'react'
import { Link, Redirect, Route, Switch, useLocation } from 'wouter'
import { Ribbon } from '../ribbon/index.js'
import { useApp } from '../state/index.js'
import { words } from '../words/index.js'
import { DropJob } from './drop-job.js'
import { Notices } from './notices.js'
import { places } from './places.js'
import { Standing } from './standing.js'

export function Board() {
  const { undo, redo } = useApp.getState()
  useHotkeys([
    ['mod+Z', undo],
    ['mod+shift+Z', redo],
    ['mod+Y', redo],
  ])
  useNumberKeys()
  const title = useTitle()
  return (
    <div className="board" data-sheet={title}>
      <a className="skip" href="#place">
        {words.toContent}
      </a>
      <Headline />
      <Notices />
      <main className="place" id="place" tabIndex={-1}>
        <Suspense fallback={<p className="inner soft">{words.planning} …</p>}>
          <Switch>
            {places.map(({ name, view: View }) => (
              <Route key={name} path={`/${name}`}>
                <View />
              </Route>
            ))}
            <Route>
              <Redirect to="/days" />
            </Route>
          </Switch>
        </Suspense>
      </main>
      <Ribbon />
      <DropJob />
    </div>
  )
}

/** Place, job and revision: what the window is called, and what stands on top of what is printed. */
function useTitle(): string {
  const [path] = useLocation()
  const name = useApp(state => state.plan?.job.name)
  const revision = useApp(state => state.plan?.job.revision)
  const here = places.find(place => path === `/${place.name}`)
  const place = here && words.places[here.name]
  useEffect(() => {
    document.title = [place, name, words.product].filter(Boolean).join(' · ')
  }, [place, name])
  return [name, revision && words.revisionOf(revision), place].filter(Boolean).join(' · ')
}

/** Alt and a number goes to a place; by the key's position, since some layouts write signs with it. */
function useNumberKeys() {
  const [, go] = useLocation()
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (!event.altKey || event.ctrlKey || event.metaKey) return
      const place = /^Digit(\d)$/.exec(event.code)?.[1]
      const chosen = place && places[Number(place) - 1]
      if (!chosen) return
      event.preventDefault()
      go(`/${chosen.name}`)
    }
    window.addEventListener('keydown', press)
    return () => window.removeEventListener('keydown', press)
  }, [go])
}

function Headline() {
  const name = useApp(state => state.plan?.job.name)
  const [path] = useLocation()
  const here = places.find(place => path === `/${place.name}`)
  return (
    <header className="headline">
      <h1>{name ?? words.product}</h1>
      <nav aria-label={words.way}>
        <ul className="way">
          {places.map((place, index) => (
            <li key={place.name}>
              <Link
                href={`/${place.name}`}
                aria-current={place === here ? 'page' : undefined}
                aria-keyshortcuts={`Alt+${index + 1}`}
                title={words.placeKey(words.placeHints[place.name], index + 1)}
              >
                {words.places[place.name]}
              </Link>
            </li>
          ))}
        </ul>
      </nav>
      <span className="spread" />
      <Planning />
      <Standing />
    </header>
  )
}

/** How far the plan is, with a way to stop it; or what keeps it from being made. */
function Planning() {
  const planning = useApp(state => state.planning)
  const problems = useApp(state => state.problems.length)
  const isHeld = useApp(state => state.heldDays === 'searching')
  if (planning) {
    const stage = isHeld
      ? words.lookingOn
      : (words.stages[planning.stage as keyof typeof words.stages] ?? words.planning)
    return (
      <Group gap="xs" role="status">
        <span className="soft">{stage} …</span>
        <Progress value={planning.share * 100} w={90} aria-label={words.planning} />
        <Button size="compact-sm" variant="default" onClick={() => useApp.getState().cancel()}>
          {words.cancel}
        </Button>
      </Group>
    )
  }
  return problems > 0 ? (
    <Link href="/site" className="limit">
      {words.problems(problems)}
    </Link>
  ) : null
}
