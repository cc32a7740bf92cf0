import { Bug } from '@dawnlift/core/result'
import { Command, CommanderError } from 'commander'
import { addCalc } from './command/calc.js'
import { addCheck } from './command/check.js'
import type { CommandContext, ExitCode } from './command/command-context.js'
import { addEstimate } from './command/estimate.js'
import { addExplain } from './command/explain.js'
import { addFit } from './command/fit.js'
import { addForecast } from './command/forecast.js'
import { addInspect } from './command/inspect.js'
import { addLevers } from './command/levers.js'
import { addLog } from './command/log.js'
import { addNew } from './command/new.js'
import { addPlan } from './command/plan.js'
import { addResume } from './command/resume.js'
import { addRisk } from './command/risk.js'
import { addSchema } from './command/schema.js'
import { addServe } from './command/serve.js'
import { addShare } from './command/share.js'
import { addStand } from './command/stand.js'
import { addTrials } from './command/trials.js'
import { addWeather } from './command/weather.js'
import { addWeigh } from './command/weigh.js'
import type { Screen } from './screen/terminal.js'

export async function runDawnlift(words: readonly string[], screen: Screen): Promise<ExitCode> {
  let code: ExitCode = 0
  const context: CommandContext = {
    screen,
    finish: last => {
      code = last
    },
  }
  const program = new Command('dawnlift')
    .description(
      'Plans and runs the print days of a building whose walls are extruded in layers of concrete on site.',
    )
    .version('0.1.0')
    .exitOverride()
    .configureOutput({
      writeOut: text => screen.out(text.trimEnd()),
      writeErr: text => screen.err(text.trimEnd()),
    })
  for (const add of [
    addNew,
    addCheck,
    addPlan,
    addExplain,
    addLevers,
    addWeigh,
    addRisk,
    addEstimate,
    addShare,
    addStand,
    addForecast,
    addWeather,
    addFit,
    addTrials,
    addCalc,
    addInspect,
    addResume,
    addLog,
    addServe,
    addSchema,
  ]) {
    add(program, context)
  }
  try {
    await program.parseAsync([...words], { from: 'user' })
    return code
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2
    if (isSystemError(error)) {
      screen.err(`The computer refused: ${error.message}. Check the disk, the folder and your rights to it.`)
      return 2
    }
    const what = error instanceof Error ? error.message : String(error)
    screen.err(
      `This is a mistake of Dawnlift, not of your job: ${what}${error instanceof Bug ? '' : ` (${errorPlace(error)})`}`,
    )
    screen.err('Nothing was written. Please keep the job folder as it is and send it with this line.')
    return 3
  }
}

/** A full disk or a folder one may not write to is no mistake of ours. */
const isSystemError = (error: unknown): error is NodeJS.ErrnoException =>
  error instanceof Error && 'syscall' in error && 'code' in error

/** The first place in our own code, enough to find it by; never a whole stack. */
function errorPlace(error: unknown): string {
  const line =
    error instanceof Error ? error.stack?.split('\n').find(each => each.includes('/packages/')) : undefined
  return line ? line.replace(/^.*\/packages\//, '').replace(/\)$/, '') : 'no place known'
}
