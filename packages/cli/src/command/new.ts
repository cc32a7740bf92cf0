import { existsSync, mkdirSync, mkdtempSync, renameSync, writeFileSync } from 'node:fs'
import { basename, dirname, resolve } from 'node:path'
import { newJobText } from '@dawnlift/document/job'
import type { Command } from 'commander'
import { showProblems } from '../screen/problem-list.js'
import type { CommandContext } from './command-context.js'

export function addNew(program: Command, { screen, finish }: CommandContext): void {
  program
    .command('new')
    .argument('<name>', 'name of the job; becomes a folder')
    .description('Makes a job folder to start from: commented, and it plans without change.')
    .action((name: string) => {
      const folder = resolve(screen.folder, name)
      if (existsSync(folder)) {
        showProblems(
          screen,
          [
            {
              code: 'cli/folder-exists',
              at: name,
              say: `${name} exists already. Choose another name; nothing was changed.`,
            },
          ],
          false,
        )
        return finish(2)
      }
      // Written whole under another name first: a stop half-way leaves no half job.
      mkdirSync(dirname(folder), { recursive: true })
      const aside = mkdtempSync(`${folder}.part-`)
      writeFileSync(`${aside}/job.yaml`, newJobText(basename(folder)))
      renameSync(aside, folder)
      screen.out(`Made ${name}/job.yaml. Next: dawnlift plan ${name}`)
    })
}
