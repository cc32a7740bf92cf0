import type { Hold } from '@dawnlift/core/campaign'
import { pumpOffWord, sameFrame } from '@dawnlift/core/machine'
import { type LayerRun, liftRun, type Pass } from '@dawnlift/core/route'
import { comment, message } from './comment.js'
import type { LiftFile } from './lift-file.js'
import { type ChainRules, startWords, writeChain } from './write-chain.js'
import { onGrid, plain, writtenUnits } from './written-number.js'

/** The machine file of one lift: words of RS-274 [NISTIR6556] and ISO 6983 [ISO6983] only, one lift per file. */
export function writeLift(file: LiftFile): string {
  let text = ''
  for (const block of liftBlocks(file)) text += block
  return text
}

/** The same lift from a layer and pass on, after a stop. */
export const writeRestart = (file: LiftFile, at: { readonly layer: number; readonly pass: number }): string =>
  writeLift({ ...file, fromLayer: at.layer, fromPass: at.pass })

/** The file layer by layer, for writing while it is made. */
export function* liftBlocks(file: LiftFile): Generator<string> {
  const finished = file.lineNumbers ? numbered() : (text: string) => text
  const rules = chainRules(file)
  // layers of one plan share their passes and so their text: only heights differ
  const known = new Map<readonly Pass[], readonly ChainText[]>()
  const { layers, end } = liftRun(file.routes, file.machine, file.options, file)
  yield finished(joined(opening(file)))
  for (const [i, layer] of layers.entries()) {
    const chains = known.get(layer.passes) ?? chainTexts(layer, rules)
    known.set(layer.passes, chains)
    const raised = i > 0 && holdsAfter(file, layers[i - 1]!.layer).length > 0
    yield finished(layerText(file, layer, chains, raised))
    yield finished(joined(holdLines(file, layers, i)))
  }
  yield finished(joined(closing(file, layers.at(-1)!.z + end.lift)))
}

/** A chain as text, and the words that lead to it; `travel` is the index of the travel there. */
interface ChainText {
  readonly travel: number
  readonly over: string
  readonly text: string
}

const chainRules = (file: LiftFile): ChainRules => ({
  machine: file.machine,
  origin: file.options.origin ?? sameFrame,
  runOut: file.runOut ?? true,
})

/** The chains of a layer: passes that are joined without a stop. */
function chainTexts({ passes, travels }: LayerRun, rules: ChainRules): ChainText[] {
  const starts = passes.flatMap((_, i) => (i === 0 || !travels[i]!.joined ? [i] : []))
  return starts.map((travel, k) => {
    const chain = passes.slice(travel, starts[k + 1] ?? passes.length)
    return { travel, over: `G0 ${startWords(chain, rules)}\n`, text: joined(writeChain(chain, rules)) }
  })
}

/** Up, over, down and along, chain after chain; after a hold the nozzle is up already. */
function layerText(file: LiftFile, layer: LayerRun, chains: readonly ChainText[], raised: boolean): string {
  const down = `G0 Z${height(file, layer.z)}\n`
  let text = joined(layerOpening(file, layer.layer))
  for (const { travel, over, text: chain } of chains) {
    const up = raised && travel === 0 ? '' : `G0 Z${height(file, layer.z + layer.travels[travel]!.lift)}\n`
    text += `${up}${over}${down}${chain}`
  }
  return text
}

/** What a flow is read in, and one of it in m³/s. */
const flowUnits = {
  metric: ['L/min', 1 / 60000],
  imperial: ['gal/min', 3.785411784 / 60000],
} as const

function opening(file: LiftFile): string[] {
  const { machine } = file
  const { units, rotary } = machine.words
  const [unit, flow] = flowUnits[file.options.units ?? 'metric']
  const { settingPerFlow, settingIdle = 0 } = machine.pump
  const perUnit = plain(Number((settingPerFlow * flow).toPrecision(6)))
  const scale =
    settingIdle === 0
      ? `S ${perUnit} is 1 ${unit}`
      : `S ${plain(Number(settingIdle.toPrecision(4)))} and ${perUnit} for each ${unit}`
  const part = file.fromPass ? `, restart at its bead ${file.fromPass + 1}` : ''
  return [
    comment(`job ${file.job}`),
    comment(`lift ${file.lift}, section ${file.routes.section}`),
    comment(`layers ${file.fromLayer} to ${file.toLayer}${part}`),
    comment(`machine ${machine.name}; heights at the top of the bead; ${scale}`),
    ...(machine.headingRate > 0
      ? [comment(`${rotary} is the heading of the nozzle, counter-clockwise`)]
      : []),
    comment('before printing: dry run with the pump off, nobody inside the reach of the machine'),
    `${units} G90 G17 G94`,
    'G40 G49 G80',
    'G64',
  ]
}

function layerOpening(file: LiftFile, layer: number): string[] {
  const calls = (file.calls ?? []).filter(call => call.layerIn === layer)
  return [
    comment(`lift ${file.lift}, layer ${layer}`),
    ...calls.map(call =>
      comment(
        `call ${call.id}: ${call.trade}, ${call.what} in wall ${call.wall}, layers ${call.layerIn} to ${call.layerOut}`,
      ),
    ),
  ]
}

const holdsAfter = (file: LiftFile, layer: number): readonly Hold[] =>
  (file.holds ?? []).filter(hold => hold.afterLayer === layer)

/** The nozzle waits as high as it has to be for the way to the next layer. */
function holdLines(file: LiftFile, layers: readonly LayerRun[], i: number): string[] {
  const holds = holdsAfter(file, layers[i]!.layer)
  const next = layers[i + 1]
  if (holds.length === 0 || !next) return []
  const raise = `G0 Z${height(file, next.z + (next.travels[0]?.lift ?? file.machine.travelClearance))}`
  return [
    raise,
    ...holds.flatMap(hold => [
      message(
        `hold after layer ${hold.afterLayer}: ${hold.reason} ${hold.ref}, ${minutes(hold.duration)} min`,
      ),
      'M0',
    ]),
  ]
}

const closing = (file: LiftFile, z: number): string[] => [
  `G0 Z${height(file, z)}`,
  comment(`end of lift ${file.lift}`),
  pumpOffWord,
  'M2',
]

const height = (file: LiftFile, z: number): string => plain(onGrid(z, writtenUnits(file.machine)))
const minutes = (seconds: number): string => plain(Math.round(seconds / 6) / 10)

const joined = (lines: readonly string[]): string => (lines.length > 0 ? `${lines.join('\n')}\n` : '')

/** N words 1 to 99999 and round again, on every line. */
function numbered(): (text: string) => string {
  let n = 0
  return text =>
    text.replace(/^(?=.)/gm, () => {
      n = (n % 99999) + 1
      return `N${n} `
    })
}
