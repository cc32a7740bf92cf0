import type { Campaign, Lift } from '../campaign/index.js'
import { localTime } from '../clock/index.js'
import type { Embed, Job, Wall } from '../job/index.js'
import type { Instant } from '../quantity/index.js'
import { assert } from '../result/index.js'
import type { SectionRoutes } from '../route/index.js'
import type { Section } from '../section/index.js'
import { layersBelow } from '../wall/index.js'
import type { Call } from './call.js'
import { cornersOf, nearestCorner, tapeFace } from './corner.js'
import { dayOf, layerDown, liftsOf, passingTime, sectionAt } from './lift-time.js'
import { placeAt } from './station.js'
import { proofOf, toolOf } from './trade-words.js'

/** What of a plan the calls follow from. */
export interface CallParts {
  readonly job: Job
  readonly sections: readonly Section[]
  /** With routes a `gap` call follows the nozzle to the minute; without, half a layer either way. */
  readonly routes?: readonly SectionRoutes[]
  readonly campaign: Campaign
  /** From the earliest clean cut to the latest cut by knife, for a layer down at that moment; none where the mix gives none. */
  readonly cutWindow: (layerDown: Instant) => CutTimes | undefined
}

/** When a layer can be cut; `sure: false` where that holds for the best estimate of the mix alone. */
export interface CutTimes {
  readonly from: Instant
  readonly until: Instant
  readonly sure?: boolean
}

/** First and last layer beside something. */
export interface Span {
  readonly first: number
  readonly last: number
}

/** Layers beside an embed or lintel, snapped as the beads are (halves down); at least one. */
export function layerSpan(bottom: number, top: number, layerHeight: number): Span {
  const first = layersBelow(bottom, layerHeight) + 1
  return { first, last: Math.max(first, layersBelow(top, layerHeight)) }
}

/** One call for an embed, or one for each lift it reaches through. None where its layers are not scheduled. */
export function embedCalls(parts: CallParts, embed: Embed): readonly Call[] {
  const wall = wallOf(parts.job, embed.wall)
  const section = sectionAt(parts.sections, embed.wall, embed.at)
  if (!section) return []
  const span = layerSpan(embed.bottom, embed.bottom + embed.height, parts.job.print.layerHeight)
  const lifts = liftsOf(parts.campaign, section.id)
  const touched = lifts.filter(lift => lift.firstLayer <= span.last && lift.lastLayer >= span.first)
  const perLift = embed.method === 'cut' || isLeftFree(embed)
  const called = perLift ? touched : touched.slice(0, 1)
  return called.map((lift, index) => {
    const own = { first: Math.max(span.first, lift.firstLayer), last: Math.min(span.last, lift.lastLayer) }
    // A part that goes on from the lift below starts where that lift ends.
    const bottom =
      perLift && own.first > span.first ? (own.first - 1) * parts.job.print.layerHeight : embed.bottom
    const window = windowOf(parts, embed, wall, lift, perLift ? own : span)
    return {
      id: index === 0 ? embed.id : `${embed.id}/${index + 1}`,
      trade: embed.trade,
      what: embed.kind,
      wall: embed.wall,
      section: section.id,
      lift: lift.id,
      date: localTime(window.from, parts.job.site.timeZone).date,
      layerIn: perLift ? own.first : span.first,
      layerOut: perLift ? own.last : span.last,
      ...window,
      place: placeOf(parts.job, wall, { ...embed, bottom }),
      tool: toolOf(embed),
      proof: proofOf(embed),
    }
  })
}

/** Where an embed is, as a tape finds it: along its face from the nearest corner of that face, to its middle. */
export function placeOf(job: Job, wall: Wall, item: Pick<Embed, 'at' | 'bottom' | 'face'>): Call['place'] {
  const near = nearestCorner(cornersOf(wall, job.walls), tapeFace(item.face), item.at)
  return {
    from: near ? near.corner.name : `start of ${wall.name}`,
    along: near ? near.along : item.at,
    up: item.bottom,
    face: faceWords[item.face],
  }
}

const faceWords: Readonly<Record<Embed['face'], string>> = {
  left: 'left face',
  right: 'right face',
  middle: 'in the cavity, measured on the left face',
  through: 'right through, measured on the left face',
}

export function wallOf(job: Job, id: string): Wall {
  const wall = job.walls.find(candidate => candidate.id === id)
  assert(wall, `wall ${id} is in the job`)
  return wall
}

type Window = Pick<Call, 'from' | 'until' | 'cut' | 'cutInSteps' | 'cutDoubt'>

function windowOf(parts: CallParts, embed: Embed, wall: Wall, lift: Lift, span: Span): Window {
  switch (embed.method) {
    case 'cut':
      return cutting(parts, lift, span)
    case 'set':
      return setting(parts, embed, lift, span.first)
    case 'gap':
      return isLeftFree(embed)
        ? cleaning(parts, lift, span.last)
        : standing(parts, embed, wall, lift, span.first)
  }
}

/**
 * The youngest layer must be firm enough and the oldest still soft enough. Where no one moment is both, the window is
 * the whole stretch from the oldest layer's first clean cut to the youngest one's last: cut upwards as the lift climbs.
 */
export function cutting(parts: CallParts, lift: Lift, span: Span): Window {
  const oldest = parts.cutWindow(layerDown(lift, span.first))
  const youngest = parts.cutWindow(layerDown(lift, span.last))
  if (!oldest || !youngest) {
    const at = layerDown(lift, span.last)
    return { from: at, until: at, cutDoubt: 'none' }
  }
  const doubt = oldest.sure === false || youngest.sure === false ? { cutDoubt: 'unsure' as const } : {}
  if (youngest.from <= oldest.until) {
    const cut = { from: youngest.from, until: oldest.until }
    return { ...cut, cut, ...doubt }
  }
  const cut = { from: oldest.from, until: youngest.until }
  return { ...cut, cut, cutInSteps: true, ...doubt }
}

/** Chases and niches the nozzle leaves free: nothing is put in, the edges are cleaned while they are soft. */
const isLeftFree = (embed: Embed): boolean =>
  embed.method === 'gap' && (embed.kind === 'chase' || embed.kind === 'niche')

function cleaning(parts: CallParts, lift: Lift, last: number): Window {
  const from = layerDown(lift, last)
  return { from, until: Math.max(from, parts.cutWindow(from)?.until ?? from) }
}

/** Laid on the layer below it while the nozzle holds; on the slab, or on yesterday's wall, before the lift starts. */
function setting(parts: CallParts, embed: Embed, lift: Lift, first: number): Window {
  const hold = lift.holds.find(candidate => candidate.ref === embed.id)
  const on = hold?.afterLayer ?? first - 1
  if (on < lift.firstLayer) {
    const from = Math.max(dayOf(parts.campaign, lift).start, lift.start - 2 * parts.job.crew.embedTime)
    return { from: Math.min(from, lift.start), until: lift.start }
  }
  const from = layerDown(lift, on)
  return { from, until: from + (hold?.duration ?? parts.job.crew.embedTime) }
}

/** Stands in its place between the nozzle's last pass below it and its first pass beside it. */
function standing(parts: CallParts, embed: Embed, wall: Wall, lift: Lift, first: number): Window {
  const { point } = placeAt(wall.centreline, embed.at)
  const routes = parts.routes ?? []
  const until = passingTime(lift, first, point, routes)
  if (first > lift.firstLayer) return { from: passingTime(lift, first - 1, point, routes), until }
  return { from: Math.min(dayOf(parts.campaign, lift).start, lift.start), until }
}
