// Fetches the outside RS-274 interpreter that tests compare machine files with, into .cache/rs274.
// Debian and its derivatives only: packages are downloaded by apt and unpacked aside, nothing is installed.
import { execFileSync } from 'node:child_process'
import { existsSync, mkdirSync, mkdtempSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = dirname(dirname(fileURLToPath(import.meta.url)))
const target = join(root, '.cache/rs274')
const program = join(target, 'usr/bin/rs274')
const interpreterPackage = 'linuxcnc-uspace'
const libraries = /^(libboost-python|libpython3|libtirpc|libedit|libbsd|libmd0)/

const say = text => console.log(`outside-tools: ${text}`)
const run = (command, args, options = {}) =>
  execFileSync(command, args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'], ...options })

/** Why it cannot be done here, in one sentence; nothing when it can. */
function hindrance() {
  if (process.platform !== 'linux') return `${process.platform} has no Debian packages`
  for (const command of ['apt-get', 'apt-cache', 'dpkg'])
    try {
      run(command, ['--version'])
    } catch {
      return `${command} is missing: this is no Debian system`
    }
  return undefined
}

/** The interpreter and those of its dependencies that the program itself loads. */
function neededPackages() {
  const lines = run('apt-cache', [
    'depends',
    '--recurse',
    '--no-recommends',
    '--no-suggests',
    '--no-conflicts',
    '--no-breaks',
    '--no-replaces',
    '--no-enhances',
    interpreterPackage,
  ]).split('\n')
  const names = lines.filter(line => /^\w/.test(line)).map(line => line.trim())
  return [
    ...new Set([interpreterPackage, ...names.filter(name => libraries.test(name) && !name.includes(':'))]),
  ]
}

function works() {
  if (!existsSync(program)) return false
  const folder = mkdtempSync(join(tmpdir(), 'outside-tools-'))
  try {
    writeFileSync(join(folder, 'tools.tbl'), '')
    writeFileSync(join(folder, 'try.ngc'), 'G21 G90\nG0 X1\nM2\n')
    const paths = ['usr/lib', 'usr/lib/x86_64-linux-gnu', 'usr/lib/aarch64-linux-gnu', 'lib/x86_64-linux-gnu']
    const env = { ...process.env, LD_LIBRARY_PATH: paths.map(each => join(target, each)).join(':') }
    run(program, ['-t', 'tools.tbl', '-g', 'try.ngc'], { env, cwd: folder })
    return true
  } catch (error) {
    say(`the program does not start: ${error.stderr || error.message}`)
    return false
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

function fetchInto() {
  const folder = mkdtempSync(join(tmpdir(), 'outside-tools-'))
  const aside = `${target}-new`
  try {
    // lists may be older than the packages they name; where they cannot be refreshed the old ones may still do
    try {
      run('apt-get', ['update'])
    } catch {
      say('package lists could not be refreshed (root needed?); trying with those at hand')
    }
    run('apt-get', ['download', ...neededPackages()], { cwd: folder })
    rmSync(aside, { recursive: true, force: true })
    mkdirSync(aside, { recursive: true })
    for (const file of readdirSync(folder).filter(name => name.endsWith('.deb')))
      run('dpkg', ['-x', join(folder, file), aside])
    rmSync(target, { recursive: true, force: true })
    renameSync(aside, target)
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

if (works()) {
  say(`the interpreter is there already: ${program}`)
} else {
  const reason = hindrance()
  if (reason) {
    say(`cannot fetch the interpreter: ${reason}. Tests that compare with it skip and say so.`)
    process.exitCode = 1
  } else {
    try {
      fetchInto()
      if (!works()) throw new Error('the unpacked program does not run')
      say(`the interpreter is ready: ${program}`)
    } catch (error) {
      say(`cannot fetch the interpreter: ${error.stderr || error.message}`)
      process.exitCode = 1
    }
  }
}
