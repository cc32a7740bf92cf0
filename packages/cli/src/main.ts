#!/usr/bin/env node
import { runDawnlift } from './run-dawnlift.js'
import { terminal } from './screen/terminal.js'

process.exitCode = await runDawnlift(process.argv.slice(2), terminal())
