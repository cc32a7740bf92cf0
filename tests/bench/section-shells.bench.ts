import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { assert } from '@dawnlift/core/result'
import { shellBuckling } from '@dawnlift/core/stand'
import { calculixDeck, DECK_WEIGHT_SHARE } from '../../packages/core/src/stand/shell/calculix-deck.fixture.js'
import { doubleSection } from '../../packages/core/src/stand/shell/double-section.fixture.js'

/** A double wall 1 m high, so many metres of it in so many rows of elements. */
const sizes = [
  [3, 6],
  [9, 6],
  [30, 6],
  [9, 12],
] as const
const walls = [
  ...sizes.map(([length, rows]) => ({
    name: `${length} m in ${rows} rows`,
    shell: doubleSection(length, rows),
  })),
  { name: '30 m in 6 rows, no two ties alike', shell: doubleSection(30, 6, 0.03) },
]

/** Whole sections as shells by ours and by an outside solver (CalculiX), the same elements, the lowest factor each, in one run. */
export const bench = () =>
  walls.map(({ name, shell }) => ({
    name: `${name}: ${shell.mesh.edges.length * shell.rows} shells, lowest factor`,
    run: () => void shellBuckling(shell),
  }))

/** What the outside solver takes for the same, read from its deck to its factor, on one thread. */
export function report(rows: readonly { readonly cpu: number; readonly median: number }[]): string[] {
  const version = /Version\s+(\S+)/.exec(spawnSync('ccx', ['-v'], { encoding: 'utf8' }).stdout ?? '')?.[1]
  if (!version) return ['not compared: the outside solver “ccx” is not installed (Debian: calculix-ccx)']
  return walls.map(({ name, shell }, i) => {
    const [theirs, ours] = [outside(shell), shellBuckling(shell)]
    assert(ours.kind === 'buckles', 'the wall buckles')
    const apart = Math.abs(ours.factor / theirs.factor - 1)
    assert(apart < 0.02, `${name}: factors within 2 %, ${ours.factor} and ${theirs.factor}`)
    const { cpu, median } = rows[i]!
    return [
      `${name}: CalculiX ${version} CPU ${theirs.cpu.toFixed(2)} s, wall ${theirs.wall.toFixed(2)} s:`,
      `${((1000 * theirs.cpu) / cpu).toFixed(1)} × ours by CPU, ${((1000 * theirs.wall) / median).toFixed(1)} × by wall;`,
      `factors ${theirs.factor.toFixed(4)} and ${ours.factor.toFixed(4)}, ${(100 * apart).toFixed(1)} % apart`,
    ].join(' ')
  })
}

function outside(shell: Parameters<typeof calculixDeck>[0]) {
  const folder = mkdtempSync(join(tmpdir(), 'dawnlift-shells-'))
  try {
    writeFileSync(join(folder, 'wall.inp'), calculixDeck(shell))
    const start = performance.now()
    const env = { ...process.env, OMP_NUM_THREADS: '1' }
    const { stdout } = spawnSync('sh', ['-c', 'ccx wall > wall.log; times'], {
      cwd: folder,
      env,
      encoding: 'utf8',
    })
    const wall = (performance.now() - start) / 1000
    // the second line of `times` is that of the shell's children: user, system
    const cpu = [...stdout.split('\n')[1]!.matchAll(/(\d+)m([\d.]+)s/g)].reduce(
      (sum, [, minutes, seconds]) => sum + 60 * Number(minutes) + Number(seconds),
      0,
    )
    const factor = /\s1\s+([\d.E+-]+)\s*$/.exec(readFileSync(join(folder, 'wall.dat'), 'utf8'))?.[1]
    return { factor: Number(factor) * DECK_WEIGHT_SHARE, cpu, wall }
  } finally {
    rmSync(folder, { recursive: true })
  }
}
