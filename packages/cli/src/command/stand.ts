import { wholeSection } from '@dawnlift/core/plan'
import { standReport } from '@dawnlift/formats/reports'
import type { Command } from 'commander'
import { showProblems } from '../screen/problem-list.js'
import type { CommandContext } from './command-context.js'
import { planFolder } from './job-input.js'

const caution =
  'Perfect geometry on the lower band of the mix: real prints fall short. A screening value; confirm by test, keep people out of the zone beside the wall; local codes and a licensed engineer decide.'

export function addStand(program: Command, { screen, finish }: CommandContext): void {
  program
    .command('stand')
    .argument('<job>', 'a job folder')
    .requiredOption('--lift <id>', 'the lift to look at, such as B3')
    .option('--json', 'one JSON document on standard output')
    .description(
      'One lift as a whole section of shells: how far its green wall is from buckling, and where. Takes seconds.',
    )
    .action(async (job: string, options: { lift: string; json?: boolean }) => {
      const planned = await planFolder(job, screen)
      if (!planned.ok) {
        showProblems(screen, planned.problems, options.json === true)
        return finish(2)
      }
      const { plan } = planned.value
      const lifts = plan.campaign.days.flatMap(day => day.lifts)
      const lift = lifts.find(each => each.id.toLowerCase() === options.lift.toLowerCase())
      if (!lift) {
        const say = `There is no lift ${options.lift}; lifts are ${lifts.map(each => each.id).join(', ')}. Name one of them.`
        showProblems(screen, [{ code: 'cli/no-lift', at: '--lift', say }], options.json === true)
        return finish(2)
      }
      const answer = wholeSection(plan, lift)
      if (!answer.ok) {
        showProblems(screen, answer.problems, options.json === true)
        return finish(2)
      }
      if (options.json) return screen.out(JSON.stringify(standReport(lift, answer.value, caution), null, 2))
      const words =
        answer.value.kind === 'buckles'
          ? answer.value.buckling.say
          : 'The section does not buckle under any weight that the shells were asked for.'
      screen.out(
        [
          `${lift.id}, section ${lift.section}, layers ${lift.firstLayer} to ${lift.lastLayer}: ${words}`,
          caution,
        ].join('\n'),
      )
    })
}
