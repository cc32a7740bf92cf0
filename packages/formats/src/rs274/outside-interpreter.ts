import { execFileSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** A free interpreter of the standard, run as a program by tests; see `scripts/outside-tools.mjs`. */
const root = fileURLToPath(new URL('../../../../', import.meta.url))
const installed = join(root, '.cache/rs274')

/** The program, by DAWNLIFT_RS274 or where `scripts/outside-tools.mjs` puts it; none: tests say so and skip. */
export function outsideInterpreter(): string | undefined {
  const named = process.env.DAWNLIFT_RS274
  const program = named && named !== '' ? named : join(installed, 'usr/bin/rs274')
  return existsSync(program) ? program : undefined
}

/** What the interpreter makes of a file: its canonical calls, or the line it refuses. */
export function interpret(program: string, text: string): { accepted: boolean; calls: string; says: string } {
  const folder = mkdtempSync(join(tmpdir(), 'dawnlift-rs274-'))
  try {
    const [file, output, tools] = ['lift.ngc', 'calls.txt', 'tools.tbl'].map(name => join(folder, name))
    writeFileSync(file!, text)
    writeFileSync(tools!, '')
    const libraries = [
      'usr/lib',
      'usr/lib/x86_64-linux-gnu',
      'usr/lib/aarch64-linux-gnu',
      'lib/x86_64-linux-gnu',
    ]
    const env = {
      ...process.env,
      LD_LIBRARY_PATH: libraries.map(each => join(program, '../../..', each)).join(':'),
    }
    try {
      execFileSync(program, ['-t', tools!, '-g', file!, output!], { env, cwd: folder, stdio: 'pipe' })
      return { accepted: true, calls: readFileSync(output!, 'utf8'), says: '' }
    } catch (error) {
      return { accepted: false, calls: '', says: String((error as { stderr?: unknown }).stderr ?? error) }
    }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** End points of the interpreter's feed moves: x, y, z [mm] and the rotary axes [deg]. */
export function feedEnds(calls: string): number[][] {
  return [...calls.matchAll(/STRAIGHT_FEED\(([^)]*)\)|ARC_FEED\(([^)]*)\)/g)].map(match => {
    const n = (match[1] ?? match[2]!).split(',').map(Number)
    return match[1] ? n.slice(0, 6) : [n[0]!, n[1]!, n[5]!, n[6]!, n[7]!, n[8]!]
  })
}

/** End points of its rapid moves. */
export const rapidEnds = (calls: string): number[][] =>
  [...calls.matchAll(/STRAIGHT_TRAVERSE\(([^)]*)\)/g)].map(match =>
    match[1]!.split(',').map(Number).slice(0, 6),
  )
