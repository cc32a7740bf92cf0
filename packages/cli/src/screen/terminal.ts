/** Where a command reads and writes. Tests hand in their own. */
export interface Screen {
  /** Results: what a pipe gets. */
  readonly out: (text: string) => void
  /** Progress and messages for people. */
  readonly err: (text: string) => void
  /** Whether progress may redraw its line. */
  readonly live: boolean
  readonly folder: string
}

export const terminal = (): Screen => ({
  out: text => void process.stdout.write(`${text}\n`),
  err: text => void process.stderr.write(text.endsWith('\r') ? text : `${text}\n`),
  live: process.stderr.isTTY === true,
  folder: process.cwd(),
})
