import type { Job } from '@dawnlift/core/job'
import { machineProfiles } from '@dawnlift/core/machine'
import type { Dimension } from '@dawnlift/core/quantity'
import type { Field, FieldKind } from '../fields/index.js'

const text: FieldKind = { kind: 'text' }
const number: FieldKind = { kind: 'number' }
const yesNo: FieldKind = { kind: 'yes-no' }
const quantity = (dimension: Dimension): FieldKind => ({ kind: 'quantity', dimension })
const point: FieldKind = { kind: 'row', dimension: 'length', count: 3 }
const range: FieldKind = { kind: 'row', dimension: 'length', count: 2 }
const field = (
  path: string,
  label: string,
  kind: FieldKind,
  more: Pick<Field, 'planned' | 'without' | 'within'> = {},
): Field => ({ path: path.split('.'), label, kind, ...more })
/** A fact of the machine: what its profile says, unless the job says otherwise. */
const machine = (
  path: string,
  label: string,
  kind: FieldKind,
  of: (machine: Job['machine']) => number | readonly number[],
): Field => field(`machine.${path}`, label, kind, { planned: ({ machine }) => of(machine) })

export interface FieldGroup {
  readonly title: string
  readonly fields: readonly Field[]
}

/** What the site is made of, in the order one asks for it. */
export const siteFields: readonly FieldGroup[] = [
  {
    title: 'Place on the earth',
    fields: [
      field('name', 'Job', text),
      field('site.name', 'Address', text),
      field('site.latitude', 'Latitude', text),
      field('site.longitude', 'Longitude', text),
      field('site.elevation', 'Above the sea', quantity('length')),
      field('site.timeZone', 'Time zone', text),
      field('site.yAxisBearing', 'The plan’s up, clockwise from north', quantity('angle')),
      field('units', 'Units on paper', { kind: 'choice', options: ['metric', 'imperial'] }),
    ],
  },
  {
    title: 'Machine and bead',
    fields: [
      field('machine.profile', 'Machine', {
        kind: 'choice',
        options: machineProfiles.map(profile => profile.name),
      }),
      field('machine.origin', 'The plan’s zero on the machine', point, {
        planned: ({ machineOrigin: { x, y, z } }) => [x, y, z],
        without: 'assumed',
      }),
      field('machine.turn', 'Turned against the plan', quantity('angle')),
      field('print.beadWidth', 'Bead, wide', quantity('length')),
      field('print.layerHeight', 'Layer, high', quantity('length')),
      field('print.speed', 'Nozzle speed', quantity('speed')),
      field('print.cornerRadius', 'Smallest corner', quantity('length')),
      field('print.overhang', 'Step per layer, of the bead', quantity('share')),
    ],
  },
  {
    title: 'What the machine can do',
    fields: [
      machine('reach.x', 'Reach across', range, ({ reach }) => reach.x),
      machine('reach.y', 'Reach along', range, ({ reach }) => reach.y),
      machine('reach.z', 'Reach up', range, ({ reach }) => reach.z),
      machine('printSpeedMost', 'Printing at most', quantity('speed'), each => each.printSpeedMost),
      machine('travelSpeed', 'Travelling', quantity('speed'), each => each.travelSpeed),
      machine('acceleration', 'Gathering speed', quantity('acceleration'), each => each.acceleration),
      machine('pump.flowMost', 'Pump at most', quantity('flow'), ({ pump }) => pump.flowMost),
      machine(
        'pump.pressureMost',
        'Pump pressure at most',
        quantity('pressure'),
        ({ pump }) => pump.pressureMost,
      ),
      machine('pump.startLag', 'Concrete comes after', quantity('time'), ({ pump }) => pump.startLag),
      machine('pump.stopLag', 'and goes on for', quantity('time'), ({ pump }) => pump.stopLag),
    ],
  },
  {
    title: 'Crew',
    fields: [
      field('crew.size', 'People', number),
      field('crew.dayStart', 'Day starts', text),
      field('crew.dayEnd', 'Day ends', text),
      field('crew.longestShift', 'Longest shift', quantity('time')),
      field('crew.setUp', 'Set-up', quantity('time')),
      field('crew.washOut', 'Wash-out', quantity('time')),
      field('crew.changeOver', 'To another section', quantity('time')),
      field('crew.lintelTime', 'Setting a lintel', quantity('time')),
      field('crew.embedTime', 'Laying an embed', quantity('time')),
      field('crew.pourTime', 'Opening and closing a pour', quantity('time')),
    ],
  },
  {
    title: 'Calendar',
    fields: [
      field('calendar.firstDay', 'First day', text),
      field('crew.workDays', 'Weekdays worked, 1 = Monday', { kind: 'weekdays' }),
      field('crew.daysOff', 'Days off', { kind: 'dates' }),
      field('site.permittedHours', 'Noise is allowed', { kind: 'span' }, { without: 'at any hour' }),
    ],
  },
]

/** How the mix is batched, on the way from silo and tap to the nozzle. */
export const batchingFields: readonly Field[] = [
  field('batching.waterTemperature', 'Water from the tap', quantity('temperature')),
  field('batching.silo.stock', 'In the silo before the first day', quantity('mass'), {
    without: 'always enough',
    within: ['batching', 'silo'],
  }),
  field('batching.silo.loads', 'Loads to come', { kind: 'loads' }, { without: 'none' }),
  field('batching.siloGain', 'Silo over the day’s mean air', quantity('temperatureDifference'), {
    without: 'worked out',
  }),
  field('batching.siloShade', 'Silo in the shade', yesNo),
  field('batching.mixingHeat', 'Heat of mixing', quantity('temperatureDifference')),
  field('batching.pumpHeat', 'Heat of pumping', quantity('temperatureDifference')),
  field('batching.hoseLength', 'Hose, long', quantity('length')),
  field('batching.hoseDiameter', 'Hose, inside', quantity('length')),
  field('batching.hoseInSun', 'Hose in the sun', yesNo),
]
