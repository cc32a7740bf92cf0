import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

export const root = fileURLToPath(new URL('..', import.meta.url))

/**
 * Real input files, kept outside the repository because they are not ours to pass on: the folder DAWNLIFT_REAL_INPUTS
 * names, or this one beside the checkout. Tests that read them say so and skip where there are none.
 */
const realInputs = process.env.DAWNLIFT_REAL_INPUTS ?? join(root, '../shared/data')
export const realFolder = (kind: 'dxf' | 'machine' | 'mortar' | 'weather'): string => join(realInputs, kind)
export const noRealInputs =
  'no real input files, which are kept outside the repository; DAWNLIFT_REAL_INPUTS names their folder'

export interface SourceFile {
  /** Path from the root, with forward slashes. */
  readonly path: string
  readonly text: string
}

/** Every TypeScript file of a package, tests and benches included. */
export const sourcesOf = (packageName: string): readonly SourceFile[] => filesOf(packageName, /\.tsx?$/)

/** Every style sheet of a package. */
export const stylesOf = (packageName: string): readonly SourceFile[] => filesOf(packageName, /\.css$/)

const filesOf = (packageName: string, named: RegExp): readonly SourceFile[] =>
  filesBelow(join(root, 'packages', packageName, 'src'))
    .filter(file => named.test(file))
    .map(file => ({ path: file.slice(root.length), text: readFileSync(file, 'utf8') }))

export const packageNames: readonly string[] = readdirSync(join(root, 'packages')).sort()

/** The module names a file imports or re-exports. */
export const importsOf = (file: SourceFile): readonly string[] =>
  [
    ...file.text.matchAll(
      /^\s*(?:import|export)\s[^'"]*?from\s+'([^']+)'|^\s*import\s+'([^']+)'|import\('([^']+)'\)/gm,
    ),
  ].map(match => match[1] ?? match[2] ?? match[3] ?? '')

function filesBelow(folder: string): readonly string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap(entry =>
    entry.isDirectory() ? filesBelow(join(folder, entry.name)) : [join(folder, entry.name)],
  )
}
