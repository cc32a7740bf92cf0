import {
  ActionIcon,
  Button,
  Group,
  Progress,
  SegmentedControl,
  Tooltip,
  useMantineColorScheme,
} from '@mantine/core'
import { useHotkeys } from '@mantine/hooks'
import { lazy, Suspense } from 'react'
import { Link, Redirect, Route, Switch, useLocation } from 'wouter'
import { Ribbon } from '../ribbon/index.js'
import { useApp } from '../state/index.js'
import { words } from '../words/index.js'

/** The seven places along the job, and the formula book. Each loads when it is first gone to. */
const places = [
  { name: 'site', view: lazy(() => import('../places/site/index.js').then(m => ({ default: m.SitePlace }))) },
  {
    name: 'walls',
    view: lazy(() => import('../places/walls/index.js').then(m => ({ default: m.WallsPlace }))),
  },
  { name: 'mix', view: lazy(() => import('../places/mix/index.js').then(m => ({ default: m.MixPlace }))) },
  { name: 'days', view: lazy(() => import('../places/days/index.js').then(m => ({ default: m.DaysPlace }))) },
  {
    name: 'trades',
    view: lazy(() => import('../places/trades/index.js').then(m => ({ default: m.TradesPlace }))),
  },
  {
    name: 'today',
    view: lazy(() => import('../places/today/index.js').then(m => ({ default: m.TodayPlace }))),
  },
  {
    name: 'tally',
    view: lazy(() => import('../places/tally/index.js').then(m => ({ default: m.TallyPlace }))),
  },
  { name: 'calc', view: lazy(() => import('../places/calc/index.js').then(m => ({ default: m.CalcPlace }))) },
] as const

export function Board() {
  const { undo, redo } = useApp.getState()
  useHotkeys([
    ['mod+Z', undo],
    ['mod+shift+Z', redo],
    ['mod+Y', redo],
  ])
  return (
    <div className="board">
      <Headline />
      <main className="place">
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
    </div>
  )
}

function Headline() {
  const [path] = useLocation()
  const name = useApp(state => state.plan?.job.name)
  return (
    <header className="headline">
      <h1>{name ?? words.product}</h1>
      <nav aria-label="Places along the job">
        <ul className="way">
          {places.map(place => (
            <li key={place.name}>
              <Link
                href={`/${place.name}`}
                aria-current={path === `/${place.name}` ? 'page' : undefined}
                title={words.placeHints[place.name]}
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
  if (planning) {
    const stage = words.stages[planning.stage as keyof typeof words.stages] ?? words.planning
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

function Standing() {
  const saved = useApp(state => state.saved)
  const units = useApp(state => state.units)
  const canUndo = useApp(state => state.past.length > 0)
  const canRedo = useApp(state => state.future.length > 0)
  const { undo, redo, setUnits } = useApp.getState()
  const { colorScheme, setColorScheme } = useMantineColorScheme()
  return (
    <Group gap="sm">
      <span className="soft" role="status">
        {words.saved[saved]}
      </span>
      <Tooltip label={words.undo}>
        <ActionIcon variant="default" size="lg" disabled={!canUndo} onClick={undo} aria-label={words.undo}>
          ↶
        </ActionIcon>
      </Tooltip>
      <Tooltip label={words.redo}>
        <ActionIcon variant="default" size="lg" disabled={!canRedo} onClick={redo} aria-label={words.redo}>
          ↷
        </ActionIcon>
      </Tooltip>
      <SegmentedControl
        size="xs"
        aria-label="Units"
        value={units}
        onChange={value => setUnits(value as typeof units)}
        data={[
          { value: 'metric', label: 'm' },
          { value: 'imperial', label: 'ft' },
        ]}
      />
      <Button
        size="compact-sm"
        variant="default"
        onClick={() => setColorScheme(colorScheme === 'dark' ? 'light' : 'dark')}
      >
        {colorScheme === 'dark' ? words.theme.light : words.theme.dark}
      </Button>
    </Group>
  )
}
