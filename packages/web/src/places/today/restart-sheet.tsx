import type { Lift } from '@dawnlift/core/campaign'
import { clockText, localTime } from '@dawnlift/core/clock'
import type { Plan } from '@dawnlift/core/plan'
import { formatPlace } from '@dawnlift/core/quantity'
import { layerRouteOf } from '@dawnlift/core/route'
import { Button, SegmentedControl } from '@mantine/core'
import { useState } from 'react'
import { Caution } from '../../parts/index.js'
import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'
import { dayText } from '../days/day-text.js'
import { standingLayers } from '../walls/standing.js'
import { layersOf, likelySection, standingIn } from './likely-section.js'
import { PassPicture } from './pass-picture.js'
import { Stepper } from './stepper.js'

/** After a stop: the machine file of what is left of a lift, from the very pass at which the nozzle stood. */
export function RestartSheet({ plan }: { readonly plan: Plan }) {
  const moment = useApp(state => state.moment)
  const [picked, setPicked] = useState<string>()
  const section = picked ?? likelySection(plan, moment)
  return (
    <details className="sheet gloves">
      <summary>
        <h2>{words.restart.title}</h2>
      </summary>
      {plan.sections.length > 1 && (
        <SegmentedControl
          aria-label={words.log.section}
          value={section}
          onChange={setPicked}
          data={plan.sections.map(({ id }) => id)}
        />
      )}
      <Restart key={section} section={section} plan={plan} />
    </details>
  )
}

/** The layer to go on with: the one above what stands by the log, or by the clock where nothing was written down. */
function Restart({ section, plan }: { readonly section: string; readonly plan: Plan }) {
  const moment = useApp(state => state.moment)
  const units = useApp(state => state.units)
  const standing = plan.soFar ? standingIn(plan, section) : (standingLayers(plan, moment).get(section) ?? 0)
  const all = layersOf(plan, section)
  const [typed, setTyped] = useState<{ readonly layer: number; readonly pass: number }>()
  const layer = Math.min(all, typed?.layer ?? standing + 1)
  const routes = plan.routes.find(each => each.section === section)
  const lift = liftWith(plan, section, layer)
  if (!routes || !lift) return <p className="soft">{words.restart.none}</p>
  const { passes } = layerRouteOf(routes, layer)
  const pass = Math.min(passes.length, typed?.pass ?? 1)
  const { restart, log } = words
  return (
    <>
      <div className="steppers">
        <Stepper
          value={layer}
          least={1}
          most={all}
          names={[log.less, log.more]}
          change={next => setTyped({ layer: next, pass: 1 })}
        >
          <strong>{restart.layer(layer, all)}</strong>
        </Stepper>
        <Stepper
          value={pass}
          least={1}
          most={passes.length}
          names={restart.passes}
          change={next => setTyped({ layer, pass: next })}
        >
          <strong>{restart.pass(pass, passes.length)}</strong>
        </Stepper>
      </div>
      <PassPicture passes={passes} first={pass} choose={next => setTyped({ layer, pass: next })} />
      <p>
        {restart.begins(formatPlace(passes[pass - 1]!.path.points[0]!, units))}{' '}
        <span className="soft">{plannedFor(plan, lift)}</span>
      </p>
      <Take lift={lift} layer={layer} pass={pass} />
      <Caution>{restart.caution}</Caution>
    </>
  )
}

const liftWith = ({ campaign }: Plan, section: string, layer: number): Lift | undefined =>
  campaign.days
    .flatMap(day => day.lifts)
    .find(lift => lift.section === section && lift.firstLayer <= layer && layer <= lift.lastLayer)

function plannedFor({ job }: Plan, { id, start, lastLayer }: Lift): string {
  const zone = job.site.timeZone
  return words.restart.lift(
    id,
    lastLayer,
    `${dayText(localTime(start, zone).date)} ${clockText(start, zone)}`,
  )
}

/** Made by the local server from what stands on disk: everything written here has to be there first. */
function Take({ lift, layer, pass }: { readonly lift: Lift; readonly layer: number; readonly pass: number }) {
  const isOnDisk = useApp(state => state.saved === 'saved' && state.served && state.unsentLog === 0)
  return isOnDisk ? (
    <p>
      <Button component="a" href={`/api/restart/${encodeURIComponent(lift.id)}/${layer}/${pass}`} download>
        {words.restart.take}
      </Button>
    </p>
  ) : (
    <p className="limit" role="status">
      {words.restart.notOnDisk}
    </p>
  )
}
