import { existsSync, mkdirSync, readdirSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Problem } from '@dawnlift/core/result'
import type { NextTrial } from '@dawnlift/core/trial'
import { cornerSampler, speedLadder, trialSheet, trialWall } from '@dawnlift/formats/trial-files'
import type { TriedWith } from './tried-with.js'

/** A bead to try with where no job says otherwise: common practice, no source. */
export const printDefaults: TriedWith['print'] = { beadWidth: 0.05, layerHeight: 0.02, speed: 0.15 }

/** The ladder, the corners, the trial wall, what each foretells, and the sheet to fill in; or why they cannot be written. */
export function writeTrials(
  folder: string,
  asked: string,
  { machine, mix, print, units }: TriedWith,
  next: readonly NextTrial[],
): Problem | undefined {
  if (existsSync(folder) && (!statSync(folder).isDirectory() || readdirSync(folder).length > 0))
    return {
      code: 'cli/out-not-empty',
      at: asked,
      say: `${asked} is there already and not an empty folder. Choose another name, so that no sheet filled in by hand is lost.`,
    }
  const files = [
    ...speedLadder(machine, { ...print, units }),
    cornerSampler(machine, { ...print, units }),
    trialWall(machine, mix, { ...print, units, temperature: mix.reference }),
  ]
  const foretold = files.map(({ name, title, words }) => [name, `  ${title}`, ...words.map(w => `  ${w}`)])
  mkdirSync(folder, { recursive: true })
  for (const { name, text } of files) writeFileSync(join(folder, name), text)
  writeFileSync(join(folder, 'foretold.txt'), `${foretold.flat().join('\n')}\n`)
  writeFileSync(join(folder, 'trials.csv'), trialSheet(next))
  return undefined
}
