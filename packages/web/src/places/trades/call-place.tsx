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
import { words } from '../../words/index.js'
import { sheetWords } from '../sheet-words.js'

/** Metres of wall shown to both sides of the place. */
const aside = 2

/** Where one call is made: the piece of wall around it, when it can be cut, with what, and what proves it is right. */
export function CallPlace({ call, plan }: { readonly call: Call; readonly plan: Plan }) {
  const [, go] = useLocation()
  const { calling } = words
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
      {drawing && <Picture drawing={drawing} label={calling.picture(call.wall, call.id)} />}
      <table className="plain wide">
        <tbody>
          {call.cutDoubt === 'none' && (
            <tr>
              <th scope="row">{calling.cut}</th>
              <td>{calling.never}</td>
            </tr>
          )}
          {call.cut && (
            <tr>
              <th scope="row">{calling.cut}</th>
              <td>
                {clockText(call.cut.from, zone)}–{clockText(call.cut.until, zone)}
                {call.cutInSteps ? calling.steps : ''}
                {call.cutDoubt === 'unsure' ? calling.unsure : ''}
              </td>
            </tr>
          )}
          <tr>
            <th scope="row">{calling.tool}</th>
            <td>{call.tool}</td>
          </tr>
          <tr>
            <th scope="row">{calling.proof}</th>
            <td>{call.proof}</td>
          </tr>
        </tbody>
      </table>
      <Group gap="sm">
        <Button variant="default" onClick={show}>
          {calling.show}
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
