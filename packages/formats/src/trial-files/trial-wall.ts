import { sayQuantity, type Units } from '@dawnlift/core/limit'
import { type Machine, sameFrame } from '@dawnlift/core/machine'
import type { MixModel } from '@dawnlift/core/mix'
import { type Celsius, formatQuantity } from '@dawnlift/core/quantity'
import { layerTime, routeSection } from '@dawnlift/core/route'
import { accessZoneWidth, makeStanding } from '@dawnlift/core/stand'
import type { Bead } from '@dawnlift/core/wall'
import { writeLift } from '../rs274/index.js'

/** A machine file to try something with, and what to say about it. */
export interface TrialFile {
  readonly name: string
  readonly title: string
  /** RS-274. */
  readonly text: string
  readonly words: readonly string[]
}

export interface TrialPrint {
  readonly beadWidth: number
  readonly layerHeight: number
  readonly speed: number
  readonly temperature: Celsius
  /** Of the words; metric unless said. */
  readonly units?: Units
}

const LENGTH = 1
const TALLEST = 1.6

/** A free single wall of one metre, printed on until it fails; how many layers it should bear is said beforehand. */
export function trialWall(machine: Machine, mix: MixModel, print: TrialPrint): TrialFile {
  const { beadWidth: width, layerHeight: height, units = 'metric' } = print
  const [x, y] = [machine.reach.x, machine.reach.y].map(([least, most]) => (least + most) / 2) as [
    number,
    number,
  ]
  const path = {
    points: [
      [x - LENGTH / 2, y],
      [x + LENGTH / 2, y],
    ] as const,
    bulges: [0],
    closed: false,
  }
  const bead: Bead = { id: 'trial', role: 'line', path, width, height }
  const layers = Math.floor(Math.min(TALLEST, machine.reach.z[1] - machine.travelClearance) / height)
  const bands = { fromLayer: 1, toLayer: layers, body: [], bodyArea: 0, beads: [bead], thinPlaces: [] }
  const options = { speed: print.speed, origin: sameFrame, units }
  const { routes } = routeSection({ section: 'T', layers, bands: [bands], volume: 0 }, machine, options)
  const time = layerTime(routes.routes[0]!)
  const [best, least] = (['fitted', 'lower'] as const).map(band =>
    standingLayers(mix, print, layers, time, band),
  )
  const zone = accessZoneWidth(layers * height)
  const words = [
    `predicted before the trial: ${said(best!, layers)} by the fitted curve, ${said(least!, layers)} by the lower band, at ${time.toFixed(0)} s a layer and ${sayQuantity(print.temperature, '°C', units).replace('°', '')}`,
    `printed to fail: stand clear by ${formatQuantity(Math.ceil(zone * 10) / 10, 'length', units)} on every side, nobody beside it; local codes and a licensed engineer decide`,
    'stop the machine when it fails and write down the layer',
  ]
  const file = { job: 'trial', lift: 'T1', machine, options, routes, fromLayer: 1, toLayer: layers }
  const text = words.map(each => `(MSG, ${each})\n`).join('') + writeLift(file)
  return { name: 'trial-wall.ngc', title: 'Trial wall', text, words }
}

const said = (stands: number, layers: number): string =>
  stands < layers ? `fails at layer ${stands + 1}` : `stands all ${layers} layers`

/** Layers that stand at safety 1 and without imperfection: what is foretold, not what is allowed. */
function standingLayers(
  mix: MixModel,
  print: TrialPrint,
  layers: number,
  time: number,
  band: 'fitted' | 'lower',
): number {
  const make = { kind: 'leaf', thickness: print.beadWidth } as const
  const top = layers * print.layerHeight
  const span = { from: 0, to: LENGTH, length: LENGTH, bottom: 0, top }
  const panel = { ...span, place: 'trial wall', wall: 'T', supports: 'none', make } as const
  const one = { value: 1, source: 'trial to failure' }
  const rules = { standSafety: one, imperfection: one }
  const standing = makeStanding({ mix, print, rules, sections: [{ section: 'T', panels: [panel] }], band })
  const layerEnds = Array.from({ length: layers }, (_, i) => (i + 1) * time)
  return standing({ section: 'T', firstLayer: 1, start: 0, layerEnds, temperature: print.temperature }).layers
}
