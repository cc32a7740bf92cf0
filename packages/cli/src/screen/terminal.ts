/** Where a command reads and writes. Tests hand in their own. */
export interface Screen {
  /** Results: what a pipe gets. */
  readonly out: (text: string) => void
  /** Progress and messages for people. */
  readonly err: (text: string) => void
  /** Whether progress may redraw its line. */
  readonly live: boolean
  readonly folder: string
  /** Letters to a line of results, where they go to a terminal. */
  readonly columns?: number
  /** When somebody ends a command that runs until told. */
  readonly stopped: () => Promise<void>
}

export const terminal = (): Screen => ({
  out: text => void process.stdout.write(`${text}\n`),
  err: text => void process.stderr.write(text.endsWith('\r') ? text : `${text}\n`),
  live: process.stderr.isTTY === true,
  folder: process.cwd(),
  ...(process.stdout.isTTY ? { columns: process.stdout.columns } : {}),
  stopped: () =>
    new Promise(stop => {
      process.once('SIGINT', () => stop())
      process.once('SIGTERM', () => stop())
    }),
})
