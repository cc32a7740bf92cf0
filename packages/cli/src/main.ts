#!/usr/bin/env node
import { runDawnlift } from './run-dawnlift.js'
import { terminal } from './screen/terminal.js'

// A reader that has seen enough (`| head`) closes the pipe: that ends the command, it is no mistake.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error
  process.exit(0)
})

process.exitCode = await runDawnlift(process.argv.slice(2), terminal())
