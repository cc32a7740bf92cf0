import { resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { initGeometry } from '@dawnlift/core/geometry'
import { buildServer, planKeeper } from '@dawnlift/server/app'
import { openFolderStore } from '@dawnlift/server/store'
import type { Command } from 'commander'
import { showProblems } from '../screen/problem-list.js'
import type { CommandContext } from './command-context.js'

const site = fileURLToPath(new URL('../../../web/site', import.meta.url))

export function addServe(program: Command, { screen, finish }: CommandContext): void {
  program
    .command('serve')
    .argument('<job>', 'a job folder')
    .option('--port <number>', 'port on this machine', '8140')
    .description('Serves the app for one job on this machine only, until stopped with Ctrl-C.')
    .action(async (job: string, options: { port: string }) => {
      const port = Number(options.port)
      if (!Number.isInteger(port) || port < 0 || port > 65535) {
        showProblems(
          screen,
          [
            {
              code: 'cli/port',
              at: '--port',
              say: `“${options.port}” is no port: a whole number from 0 to 65535 is needed; 0 takes any that is free.`,
            },
          ],
          false,
        )
        return finish(2)
      }
      const store = openFolderStore(resolve(screen.folder, job))
      if (!store.ok) {
        showProblems(screen, store.problems, false)
        return finish(2)
      }
      await initGeometry()
      const server = await buildServer({
        store: store.value,
        plans: planKeeper(store.value, () => Date.now() / 1000),
        site,
      })
      try {
        const address = await server.listen({ host: '127.0.0.1', port })
        screen.err(`Dawnlift is open at ${address}  (Ctrl-C ends it)`)
      } catch (error) {
        const busy = (error as { code?: string }).code === 'EADDRINUSE'
        if (!busy) throw error
        showProblems(
          screen,
          [
            {
              code: 'cli/port-taken',
              at: `port ${port}`,
              say: `Port ${port} is taken, perhaps by another Dawnlift. Close that one, or choose another: --port ${port + 1}`,
            },
          ],
          false,
        )
        return finish(2)
      }
      await screen.stopped()
      await server.close()
    })
}
