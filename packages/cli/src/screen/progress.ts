import type { Screen } from './terminal.js'

const cells = 24

/** A line that grows on a terminal; on anything else one line a stage, so that a log stays readable. */
export function progressLine(screen: Screen, stages: Readonly<Record<string, string>>) {
  let last = ''
  return (stage: string, share: number): boolean => {
    const name = stages[stage] ?? stage
    if (screen.live) {
      const done = Math.round(share * cells)
      screen.err(`\x1b[2K  ${'▬'.repeat(done)}${'·'.repeat(cells - done)}  ${name}\r`)
      if (share >= 1) screen.err('\x1b[2K\r')
    } else if (stage !== last) {
      screen.err(`  ${name} …`)
    }
    last = stage
    return true
  }
}
