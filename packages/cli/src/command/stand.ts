import { writeFileSync } from 'node:fs'
import { wholeSection } from '@dawnlift/core/plan'
import { figure, toSvg } from '@dawnlift/drawing/paper'
import { drawModeShape } from '@dawnlift/drawing/views'
import { standReport } from '@dawnlift/formats/reports'
import type { Command } from 'commander'
import { showProblems } from '../screen/problem-list.js'
import type { CommandContext } from './command-context.js'
import { planFolder } from './job-input.js'
import { pictureFile } from './picture-file.js'

const caution =
  'Perfect geometry on the lower band of the mix: real prints fall short. A screening value; confirm by test, keep people out of the zone beside the wall; local codes and a licensed engineer decide.'

export function addStand(program: Command, { screen, finish }: CommandContext): void {
  program
    .command('stand')
    .argument('<job>', 'a job folder')
    .requiredOption('--lift <id>', 'the lift to look at, such as B3')
    .option('--out <file>', 'draw how it would move, an SVG picture; an existing file is left alone')
    .option('--json', 'one JSON document on standard output')
    .description(
      'One lift as a whole section of shells: how far its green wall is from buckling, and where. Takes seconds.',
    )
    .action(async (job: string, options: { lift: string; out?: string; json?: boolean }) => {
      const target = pictureFile(screen, options.out)
      if (!target.ok) {
        showProblems(screen, target.problems, options.json === true)
        return finish(2)
      }
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
      if (target.value !== undefined && answer.value.kind === 'buckles') {
        const { name, revision } = plan.job
        const day = plan.campaign.days.find(({ lifts }) => lifts.includes(lift))
        const words = { job: name, revision, date: day?.date ?? '', notes: [caution] }
        const parts = { job: plan.job, lift, buckling: answer.value.buckling }
        writeFileSync(target.value, toSvg(drawModeShape(parts, figure(300, 200, words))))
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
