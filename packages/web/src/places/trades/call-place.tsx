import { clockText } from '@dawnlift/core/clock'
import { pathLength } from '@dawnlift/core/geometry'
import type { Plan } from '@dawnlift/core/plan'
import type { Call } from '@dawnlift/core/trade'
import { figure } from '@dawnlift/drawing/paper'
import { drawWallElevation } from '@dawnlift/drawing/views'
import { Button, Group } from '@mantine/core'
import { useMemo } from 'react'
import { useLocation } from 'wouter'
import { Picture } from '../../parts/index.js'
import { useApp } from '../../state/index.js'
import { sheetWords } from '../sheet-words.js'

/** Metres of wall shown to both sides of the place. */
const aside = 2

/** Where one call is made: the piece of wall around it, when it can be cut, with what, and what proves it is right. */
export function CallPlace({ call, plan }: { readonly call: Call; readonly plan: Plan }) {
  const [, go] = useLocation()
  const zone = plan.job.site.timeZone
  const drawing = useMemo(() => {
    const wall = plan.job.walls.find(each => each.id === call.wall)
    if (!wall) return undefined
    const at = stationOf(call, plan) ?? pathLength(wall.centreline) / 2
    return drawWallElevation(plan, call.wall, figure(220, 84, sheetWords(plan)), {
      seenFrom: call.place.face === 'left' ? 'left' : 'right',
      along: [at - aside, at + aside],
      calls: new Set([call.id]),
    })
  }, [call, plan])
  const show = () => {
    useApp.getState().select({ kind: 'wall', id: call.wall })
    useApp.getState().setMoment(call.from)
    go('/walls')
  }
  return (
    <div className="callplace">
      {drawing && <Picture drawing={drawing} label={`Wall ${call.wall} around ${call.id}`} />}
      <table className="plain wide">
        <tbody>
          {call.cutDoubt === 'none' && (
            <tr>
              <th scope="row">can be cut</th>
              <td>at no moment that the mix gives: leave a gap instead, or test when it can be sliced</td>
            </tr>
          )}
          {call.cut && (
            <tr>
              <th scope="row">can be cut</th>
              <td>
                {clockText(call.cut.from, zone)}–{clockText(call.cut.until, zone)}
                {call.cutInSteps ? ', upwards in steps, the pump stopped while hands are at the wall' : ''}
                {call.cutDoubt === 'unsure'
                  ? '; for the best estimate of the mix alone: try with a knife first'
                  : ''}
              </td>
            </tr>
          )}
          <tr>
            <th scope="row">tool</th>
            <td>{call.tool}</td>
          </tr>
          <tr>
            <th scope="row">proof</th>
            <td>{call.proof}</td>
          </tr>
        </tbody>
      </table>
      <Group gap="sm">
        <Button variant="default" onClick={show}>
          Show on the wall at that moment
        </Button>
      </Group>
    </div>
  )
}

/** Station of what is called for, from the job itself. */
const stationOf = (call: Call, { job }: Plan): number | undefined =>
  [...job.embeds, ...job.openings, ...job.columns].find(
    each => each.id === call.id && each.wall === call.wall,
  )?.at
