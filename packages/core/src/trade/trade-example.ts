import type { Campaign, Hold, Lift } from '../campaign/index.js'
import { instantAt } from '../clock/index.js'
import type { Column, Embed, Job, Opening, Wall } from '../job/index.js'
import type { Limit } from '../limit/index.js'
import type { Section } from '../section/index.js'
import type { CallParts } from './embed-calls.js'

/** A job of one or two straight walls and clockwork lifts, for tests: a layer of 20 mm every five minutes from 06:00. */
export const zone = 'Europe/Madrid'
export const clock = (date: string, hours: number, minutes = 0): number =>
  instantAt(date, hours * 3600 + minutes * 60, zone)

export const exampleWall = (
  id: string,
  points: readonly (readonly [number, number])[],
  more: Partial<Wall> = {},
): Wall => ({
  id,
  name: id,
  centreline: { points, bulges: points.slice(1).map(() => 0), closed: false },
  makeUp: { kind: 'double', web: 'zigzag', webPitch: 0.5 },
  thickness: 0.3,
  base: 0,
  top: 2.4,
  joints: [],
  ...more,
})

export const exampleEmbed = (id: string, more: Partial<Embed> = {}): Embed => ({
  id,
  wall: 'W',
  kind: 'box',
  trade: 'electrical',
  face: 'left',
  at: 2,
  bottom: 0.3,
  width: 0.1,
  height: 0.1,
  depth: 0.06,
  method: 'cut',
  ...more,
})

export const exampleDoor = (id: string, more: Partial<Opening> = {}): Opening => ({
  id,
  wall: 'W',
  kind: 'door',
  at: 3,
  width: 1,
  sill: 0,
  head: 2,
  lintel: { height: 0.2, bearing: 0.2, kind: 'precast' },
  ...more,
})

const limit: Limit = { kind: 'lift-height', demand: 1, capacity: 1, unit: 'm', source: 'the job' }
export const layerTime = 300

export function exampleLift(
  section: string,
  number: number,
  date: string,
  firstLayer: number,
  lastLayer: number,
  holds: readonly Hold[] = [],
): Lift {
  const start = clock(date, 6)
  const layerEnds: number[] = []
  let at = start
  for (let layer = firstLayer; layer <= lastLayer; layer++) {
    at += layerTime
    layerEnds.push(at)
    at += holds.filter(hold => hold.afterLayer === layer).reduce((sum, hold) => sum + hold.duration, 0)
  }
  const layers = lastLayer - firstLayer + 1
  return {
    id: `${section}${number}`,
    section,
    firstLayer,
    lastLayer,
    start,
    end: layerEnds.at(-1)!,
    layerEnds,
    holds,
    volume: 0.03 * layers,
    length: 30 * layers,
    wishedLayers: layers,
    binding: limit,
    runnersUp: [],
    safety: 2,
    pauseBudget: 600,
  }
}

export function exampleCampaign(lifts: readonly (readonly [string, Lift])[]): Campaign {
  const dates = [...new Set(lifts.map(([date]) => date))].sort()
  const days = dates.map((date, index) => {
    const own = lifts.filter(([d]) => d === date).map(([, lift]) => lift)
    return {
      date,
      number: index + 1,
      start: clock(date, 5),
      end: Math.max(...own.map(lift => lift.end)) + 1800,
      lifts: own,
      chilled: false,
    }
  })
  return {
    days,
    idleDays: [],
    finished: true,
    finish: days.at(-1)?.end ?? 0,
    hours: [],
    bound: { days: days.length, how: 'by hand' },
  }
}

export interface ExampleParts {
  readonly walls?: readonly Wall[]
  readonly embeds?: readonly Embed[]
  readonly openings?: readonly Opening[]
  readonly columns?: readonly Column[]
  readonly sections?: readonly Section[]
  readonly lifts: readonly (readonly [string, Lift])[]
}

/** Cuts are clean from 20 minutes after a layer is down to 80 minutes. */
export const cutWindow = (down: number) => ({ from: down + 1200, until: down + 4800 })

export function exampleParts(parts: ExampleParts): CallParts {
  const walls = parts.walls ?? [
    exampleWall('W', [
      [0, 0],
      [6, 0],
    ]),
  ]
  return {
    job: exampleJob({ ...parts, walls }),
    sections: parts.sections ?? [{ id: 'A', stretches: [{ wall: 'W', from: 0, to: 6 }], joints: [] }],
    campaign: exampleCampaign(parts.lifts),
    cutWindow,
  }
}

/** Only what trades and tallies read; the rest of a job is not theirs. */
export const exampleJob = (parts: Omit<ExampleParts, 'lifts'>): Job =>
  ({
    name: 'Example',
    revision: 'A',
    units: 'metric',
    site: { name: 'Field', latitude: 40, longitude: 0, elevation: 0, timeZone: zone, yAxisBearing: 0 },
    walls: parts.walls ?? [
      exampleWall('W', [
        [0, 0],
        [6, 0],
      ]),
    ],
    openings: parts.openings ?? [],
    embeds: parts.embeds ?? [],
    columns: parts.columns ?? [],
    print: { beadWidth: 0.05, layerHeight: 0.02, cornerRadius: 0.05, overhang: 0.15, speed: 0.2 },
    mix: { density: 2000, waterRatio: 0.25, bag: 25, cutSource: 'common practice, no source' },
    batching: { hoseLength: 20, hoseDiameter: 0.05 },
    machine: {},
    crew: {
      size: 4,
      dayStart: 5 * 3600,
      dayEnd: 20 * 3600,
      embedTime: 600,
      lintelTime: 1200,
      workDays: [1, 2, 3, 4, 5],
      daysOff: [],
    },
    costs: {
      currency: 'EUR',
      machinePerDay: 1000,
      crewPerHour: 40,
      materialPerTonne: 200,
      waterPerCubicMetre: 5,
      pourPerCubicMetre: 150,
      protectionPerSquareMetre: 3,
      mobilisation: 2000,
      embedEach: 10,
      lintelEach: 100,
      conventionalPerSquareMetre: 180,
    },
  }) as unknown as Job
