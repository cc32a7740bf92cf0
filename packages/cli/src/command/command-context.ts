import type { Screen } from '../screen/terminal.js'

/** What a command leaves behind: 0 done, 1 findings of kind fail under `check`, 2 bad input, 3 bug, 130 stopped by Ctrl-C. */
export type ExitCode = 0 | 1 | 2 | 3 | 130

export interface CommandContext {
  readonly screen: Screen
  readonly finish: (code: ExitCode) => void
}
