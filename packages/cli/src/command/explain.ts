import { explainLift, explainRunnersUp, type Lift } from '@dawnlift/core/campaign'
import { clockText } from '@dawnlift/core/clock'
import { sayLimit, sayQuantity } from '@dawnlift/core/limit'
import type { Plan } from '@dawnlift/core/plan'
import { explainReport } from '@dawnlift/formats/reports'
import type { Command } from 'commander'
import { showProblems } from '../screen/problem-list.js'
import { textTable } from '../screen/table.js'
import type { CommandContext } from './command-context.js'
import { planFolder } from './job-input.js'

export function addExplain(program: Command, { screen, finish }: CommandContext): void {
  program
    .command('explain')
    .argument('<job>', 'a job folder')
    .option('--day <number>', 'a print day, by its number or date')
    .option('--lift <id>', 'one lift, such as B3')
    .option('--json', 'one JSON document on standard output')
    .description(
      'Why each lift is not higher, what comes next, what would buy more, with the numbers behind.',
    )
    .action(async (job: string, options: { day?: string; lift?: string; json?: boolean }) => {
      const planned = await planFolder(job, screen)
      if (!planned.ok) {
        showProblems(screen, planned.problems, options.json === true)
        return finish(2)
      }
      const { plan } = planned.value
      const lifts = chosen(plan, options)
      if (lifts.length === 0) {
        showProblems(screen, [noLift(plan, options.lift ?? options.day ?? job)], options.json === true)
        return finish(2)
      }
      if (options.json) screen.out(JSON.stringify(explainReport(plan, lifts), null, 2))
      else screen.out(lifts.map(lift => liftAtLength(plan, lift)).join('\n\n'))
    })
}

const chosen = (plan: Plan, { day, lift }: { day?: string; lift?: string }): readonly Lift[] =>
  plan.campaign.days
    .filter(each => day === undefined || String(each.number) === day || each.date === day)
    .flatMap(each => each.lifts)
    .filter(each => lift === undefined || each.id.toLowerCase() === lift.toLowerCase())

const noLift = (plan: Plan, at: string) => ({
  code: 'cli/no-lift',
  at,
  say: `No lift fits. Days run from 1 to ${plan.campaign.days.length}; lifts are ${plan.campaign.days.flatMap(day => day.lifts.map(lift => lift.id)).join(', ')}. Name one of them.`,
})

/** One lift in words, with every limit that was looked at and what each alone would allow. */
function liftAtLength(plan: Plan, lift: Lift): string {
  const { units, site } = plan.job
  const zone = site.timeZone
  const day = plan.campaign.days.find(each => each.lifts.includes(lift))
  const limits = [{ limit: lift.binding, layers: lift.lastLayer - lift.firstLayer + 1 }, ...lift.runnersUp]
  const rows = limits.map(({ limit, layers }) => [
    limit.kind,
    String(layers),
    sayQuantity(limit.demand, limit.unit, units),
    sayQuantity(limit.capacity, limit.unit, units),
    sayLimit(limit, units, zone),
    limit.source,
  ])
  return [
    `${lift.id}, section ${lift.section}, ${day?.date ?? ''}: layers ${lift.firstLayer} to ${lift.lastLayer}, ${clockText(lift.start, zone)} to ${clockText(lift.end, zone)}`,
    explainLift(lift, units, zone),
    ...explainRunnersUp(lift).map(line => `  ${line}`),
    textTable(['limit', 'layers', 'asked', 'allowed', 'in words', 'source'], rows, [1, 2, 3]),
    `Standing safety ${lift.safety.toFixed(2)} (screening value; local codes and a licensed engineer decide). Pause before a cold joint ${Math.floor(Math.max(0, lift.pauseBudget) / 60)} min.`,
  ].join('\n')
}
