import type { Lift } from '@dawnlift/core/campaign'
import { explainLift, explainLiftAtLength } from '@dawnlift/core/campaign'
import type { Plan } from '@dawnlift/core/plan'
import type { Command } from 'commander'
import type { CommandContext } from '../run-dawnlift.js'
import { showProblems } from '../screen/problem-list.js'
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
        const known = plan.campaign.days.flatMap(day => day.lifts.map(lift => lift.id)).join(', ')
        showProblems(
          screen,
          [
            {
              code: 'cli/no-lift',
              at: options.lift ?? options.day ?? job,
              say: `No lift fits. Days run from 1 to ${plan.campaign.days.length}; lifts are ${known}.`,
            },
          ],
          options.json === true,
        )
        return finish(2)
      }
      const words = { units: plan.job.units, zone: plan.job.site.timeZone }
      if (options.json)
        screen.out(
          JSON.stringify(
            lifts.map(lift => ({ ...lift, say: explainLift(lift, words) })),
            null,
            2,
          ),
        )
      else screen.out(lifts.map(lift => explainLiftAtLength(lift, words)).join('\n\n'))
    })
}

const chosen = (plan: Plan, { day, lift }: { day?: string; lift?: string }): readonly Lift[] =>
  plan.campaign.days
    .filter(each => day === undefined || String(each.number) === day || each.date === day)
    .flatMap(each => each.lifts)
    .filter(each => lift === undefined || each.id.toLowerCase() === lift.toLowerCase())
