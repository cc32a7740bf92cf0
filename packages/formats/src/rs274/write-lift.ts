import type { Hold } from '@dawnlift/core/campaign'
import { pumpOffWord, sameFrame } from '@dawnlift/core/machine'
import { type LayerRun, liftRun, type Pass, type Travel } from '@dawnlift/core/route'
import { comment, message } from './comment.js'
import type { LiftFile } from './lift-file.js'
import { type ChainRules, startWords, writeChain } from './write-chain.js'
import { onGrid, plain, writtenUnits } from './written-number.js'

/** The machine file of one lift: words of RS-274 [NISTIR6556] and ISO 6983 [ISO6983] only, one lift per file. */
export const writeLift = (file: LiftFile): string => [...liftBlocks(file)].join('')

/** The same lift from a layer and pass on, after a stop. */
export const writeRestart = (file: LiftFile, at: { readonly layer: number; readonly pass: number }): string =>
  writeLift({ ...file, fromLayer: at.layer, fromPass: at.pass })

/** The file piece by piece, for writing while it is made. */
export function* liftBlocks(file: LiftFile): Generator<string> {
  const number = file.lineNumbers ? numbered() : plainLines
  const chains = new Map<
    Pass,
    { readonly start: string; readonly text: string; readonly lines: readonly string[] }
  >()
  const run = liftRun(file.routes, file.machine, file.options, file)
  const rules = chainRules(file)
  yield number(opening(file))
  for (const [i, layer] of run.layers.entries()) {
    yield number(layerOpening(file, layer.layer))
    const parts = chainsOfLayer(layer)
    for (const [k, part] of parts.entries()) {
      const known = chains.get(part.passes[0]!) ?? chainText(part.passes, rules)
      chains.set(part.passes[0]!, known)
      const raised = k === 0 && i > 0 && holdsAfter(file, run.layers[i - 1]!.layer).length > 0
      yield number(travelLines(file, layer, part.travel, known.start, raised))
      yield file.lineNumbers ? number(known.lines) : known.text
    }
    yield number(holdLines(file, run.layers, i))
  }
  yield number(closing(file, run.layers.at(-1)!.z + run.end.lift))
}

const chainRules = (file: LiftFile): ChainRules => ({
  machine: file.machine,
  origin: file.options.origin ?? sameFrame,
  runOut: file.runOut ?? true,
})

function chainText(passes: readonly Pass[], rules: ChainRules) {
  const lines = writeChain(passes, rules)
  return { start: startWords(passes, rules), text: plainLines(lines), lines }
}

/** Passes of a layer grouped by the travel that leads to them. */
function chainsOfLayer(layer: LayerRun): { travel: Travel; passes: Pass[] }[] {
  const chains: { travel: Travel; passes: Pass[] }[] = []
  layer.passes.forEach((pass, i) => {
    const travel = layer.travels[i]!
    if (travel.joined && i > 0) chains.at(-1)!.passes.push(pass)
    else chains.push({ travel, passes: [pass] })
  })
  return chains
}

function opening(file: LiftFile): string[] {
  const { machine } = file
  const { units, rotary } = machine.words
  const perLitre = plain(Number((machine.pump.settingPerFlow / 60000).toPrecision(6)))
  const part = file.fromPass ? `, restart at its bead ${file.fromPass + 1}` : ''
  return [
    comment(`job ${file.job}`),
    comment(`lift ${file.lift}, section ${file.routes.section}`),
    comment(`layers ${file.fromLayer} to ${file.toLayer}${part}`),
    comment(`machine ${machine.name}; heights at the top of the bead; S ${perLitre} is 1 L/min`),
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

/** Up, over, down; after a hold the nozzle is up already. */
function travelLines(
  file: LiftFile,
  layer: LayerRun,
  travel: Travel,
  start: string,
  raised: boolean,
): string[] {
  const up = raised ? [] : [`G0 Z${height(file, layer.z + travel.lift)}`]
  return [...up, `G0 ${start}`, `G0 Z${height(file, layer.z)}`]
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

const plainLines = (lines: readonly string[]): string => lines.map(line => `${line}\n`).join('')

/** N words 1 to 99999 and round again, on every line. */
function numbered(): (lines: readonly string[]) => string {
  let n = 0
  return lines =>
    lines
      .map(line => {
        n = (n % 99999) + 1
        return `N${n} ${line}\n`
      })
      .join('')
}
