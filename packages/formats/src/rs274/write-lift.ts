import type { Hold } from '@dawnlift/core/campaign'
import { pumpOffWord, sameFrame } from '@dawnlift/core/machine'
import { type LayerRun, liftRun, type Pass } from '@dawnlift/core/route'
import { ByteText, type TextSpan } from './byte-text.js'
import { type ChainWriter, chainWriter } from './chain-writer.js'
import { comment, message } from './comment.js'
import type { LiftFile } from './lift-file.js'
import { lineNumbered } from './line-numbers.js'
import type { ChainLines } from './write-chain.js'
import type { ChainRules } from './write-piece.js'
import { onGrid, plain, type WrittenUnits, writtenUnits } from './written-number.js'

/** Lift → the bytes of its machine file. */
export type LiftWriter = (file: LiftFile) => Uint8Array

/** The machine file of one lift: words of RS-274 [NISTIR6556] and ISO 6983 [ISO6983] only, one lift per file. */
export const writeLift = (file: LiftFile): string => new TextDecoder().decode(liftWriter()(file))

/** The same lift from a layer and pass on, after a stop. */
export const writeRestart = (file: LiftFile, at: { readonly layer: number; readonly pass: number }): string =>
  writeLift({ ...file, fromLayer: at.layer, fromPass: at.pass })

/** For the lifts of one plan: what recurs in several of them is made once. */
export function liftWriter(): LiftWriter {
  const text = new ByteText()
  let last: { readonly rules: ChainRules; readonly chains: ChainWriter } | undefined
  return file => {
    const rules = chainRules(file)
    if (!last || !sameRules(last.rules, rules)) last = { rules, chains: chainWriter(rules) }
    putLift(text, file, last.chains)
    return file.lineNumbers ? lineNumbered(text.taken()) : text.taken()
  }
}

function putLift(text: ByteText, file: LiftFile, chains: ChainWriter): void {
  const units = writtenUnits(file.machine)
  // layers of one plan share their passes and so their lines: only heights differ
  const known = new Map<readonly Pass[], readonly LaidChain[]>()
  const { layers, end } = liftRun(file.routes, file.machine, file.options, file)
  putLines(text, opening(file))
  for (const [i, layer] of layers.entries()) {
    const raised = i > 0 && holdsAfter(file, layers[i - 1]!.layer).length > 0
    putLines(text, layerOpening(file, layer.layer))
    const before = known.get(layer.passes)
    if (before) layAgain(text, layer, raised, before, units)
    else known.set(layer.passes, layFirst(text, layer, raised, chains, units))
    putHolds(text, file, layers, i)
  }
  putHeight(text, layers.at(-1)!.z + end.lift, units)
  putLines(text, [comment(`end of lift ${file.lift}`), pumpOffWord, 'M2'])
}

/** Where a chain, and the way over to it, stand in a file; `travel` is the index of the travel there. */
interface LaidChain {
  readonly travel: number
  readonly over: TextSpan
  readonly lines: TextSpan
}

const chainRules = (file: LiftFile): ChainRules => ({
  machine: file.machine,
  origin: file.options.origin ?? sameFrame,
  runOut: file.runOut ?? true,
})

const sameRules = (a: ChainRules, b: ChainRules): boolean =>
  a.machine === b.machine && a.origin === b.origin && a.runOut === b.runOut

/** Up, over, down and along, chain after chain. A chain is of passes that are joined without a stop. */
function layFirst(
  text: ByteText,
  layer: LayerRun,
  raised: boolean,
  chains: ChainWriter,
  units: WrittenUnits,
): LaidChain[] {
  const laid: LaidChain[] = []
  for (let travel = 0; travel < layer.passes.length; ) {
    let end = travel + 1
    while (layer.travels[end]?.joined) end++
    const chain = layer.passes.slice(travel, end)
    const lines = chains.linesOf(chain)
    putRaise(text, layer, travel, raised, units)
    const over = text.spanOf(() => text.piece(chains.text, lines.over))
    putHeight(text, layer.z, units)
    laid.push({ travel, over, lines: text.spanOf(() => putChain(text, chain, chains.text, lines)) })
    travel = end
  }
  return laid
}

function layAgain(
  text: ByteText,
  layer: LayerRun,
  raised: boolean,
  laid: readonly LaidChain[],
  units: WrittenUnits,
): void {
  for (const { travel, over, lines } of laid) {
    putRaise(text, layer, travel, raised, units)
    text.again(over)
    putHeight(text, layer.z, units)
    text.again(lines)
  }
}

/** After a hold the nozzle is up already. */
function putRaise(
  text: ByteText,
  layer: LayerRun,
  travel: number,
  raised: boolean,
  units: WrittenUnits,
): void {
  if (!raised || travel > 0) putHeight(text, layer.z + layer.travels[travel]!.lift, units)
}

/** Each pass below a comment with the name of its bead. */
function putChain(text: ByteText, chain: readonly Pass[], written: ByteText, { passes }: ChainLines): void {
  chain.forEach(({ bead }, i) => {
    text.words(comment(`bead ${bead}${i === 0 ? '' : ', without a stop'}`)).words('\n')
    text.piece(written, passes[i]!)
  })
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
    ...(file.standing?.length
      ? [
          comment(
            'comes, travels and goes above the walls of other sections; bars and props it does not know',
          ),
        ]
      : []),
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
function putHolds(text: ByteText, file: LiftFile, layers: readonly LayerRun[], i: number): void {
  const holds = holdsAfter(file, layers[i]!.layer)
  const next = layers[i + 1]
  if (holds.length === 0 || !next) return
  const lift = next.travels[0]?.lift ?? file.machine.travelClearance
  putHeight(text, next.z + lift, writtenUnits(file.machine))
  for (const { afterLayer, reason, ref, duration } of holds)
    putLines(text, [
      message(`hold after layer ${afterLayer}: ${reason} ${ref}, ${minutes(duration)} min`),
      'M0',
    ])
}

const putHeight = (text: ByteText, z: number, units: WrittenUnits): ByteText =>
  text.words('G0 Z').decimal(onGrid(z, units), units.places).words('\n')

function putLines(text: ByteText, lines: readonly string[]): void {
  for (const line of lines) text.words(line).words('\n')
}

const minutes = (seconds: number): string => plain(Math.round(seconds / 6) / 10)
