import type { Path } from '@dawnlift/core/geometry'
import { machineFrame } from '@dawnlift/core/machine'
import type { Pass } from '@dawnlift/core/route'
import { ByteText } from './byte-text.js'
import { type ChainLines, writeChain } from './write-chain.js'
import type { ChainRules, ChainText } from './write-piece.js'
import { settingTexts } from './written-number.js'

/** Chain → its lines, pieces of one text. */
export interface ChainWriter {
  readonly text: ByteText
  readonly linesOf: (chain: readonly Pass[]) => ChainLines
}

/** A chain that recurs, in other layers and lifts and under other names, is written once. */
export function chainWriter(rules: ChainRules): ChainWriter {
  const to: ChainText = {
    rules,
    text: new ByteText(),
    settingText: settingTexts(),
    frame: machineFrame(rules.origin),
  }
  const written = new Map<Path, { readonly chain: readonly Pass[]; readonly lines: ChainLines }[]>()
  const linesOf = (chain: readonly Pass[]) => {
    const begun = written.get(chain[0]!.path) ?? []
    written.set(chain[0]!.path, begun)
    const known = begun.find(each => runsAlike(each.chain, chain))
    if (known) return known.lines
    const lines = writeChain(chain, to)
    begun.push({ chain, lines })
    return lines
  }
  return { text: to.text, linesOf }
}

function runsAlike(a: readonly Pass[], b: readonly Pass[]): boolean {
  if (a.length !== b.length) return false
  for (let i = 0; i < a.length; i++) if (!movesAlike(a[i]!, b[i]!)) return false
  return true
}

const movesAlike = (a: Pass, b: Pass): boolean =>
  a.path === b.path &&
  a.width === b.width &&
  a.height === b.height &&
  sameNumbers(a.speeds, b.speeds) &&
  sameNumbers(a.headings, b.headings)

const sameNumbers = (a: readonly number[], b: readonly number[]): boolean =>
  a === b || (a.length === b.length && a.every((value, i) => value === b[i]))
