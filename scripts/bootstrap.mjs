/**
 * Sets the checkout up by itself: packages, build, browser. Only node: modules, for nothing is installed yet.
 * Every step is skipped when what it would make is there already and its inputs have not changed.
 *
 *   node scripts/bootstrap.mjs [--build] [--browser]
 */
import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('..', import.meta.url))
const stamps = join(root, 'node_modules', '.dawnlift')
/** What a build makes, and what is fetched. */
const made = new Set(['dist', 'node_modules'])
const page = join(root, 'packages/web/site')
const wants = new Set(process.argv.slice(2))
const say = text => process.stderr.write(`dawnlift: ${text}\n`)
const stop = text => {
  say(text)
  process.exit(1)
}

checkNode()
installPackages()
if (wants.has('--build')) build()
if (wants.has('--browser')) await findBrowser()

function checkNode() {
  const [major, minor] = process.versions.node.split('.').map(Number)
  if (major > 20 || (major === 20 && minor >= 19)) return
  stop(
    `Node ${process.versions.node} is too old; 20.19 or newer is needed. Install a current LTS line and run this again.`,
  )
}

function installPackages() {
  const inputs = [
    'package-lock.json',
    'package.json',
    ...packageFolders().map(name => `packages/${name}/package.json`),
  ]
  const state = digest(
    inputs.map(file => join(root, file)),
    process.versions.modules,
  )
  if (existsSync(join(root, 'node_modules')) && readStamp('packages') === state) return
  say('installing packages (once; about a minute) …')
  const ran = run('npm', [
    'ci',
    '--include=dev',
    '--include=optional',
    '--prefer-offline',
    '--no-audit',
    '--no-fund',
  ])
  if (ran !== 0)
    stop(
      'npm ci failed (see above). Without a network the packages cannot be fetched; with one, run this again.',
    )
  writeStamp('packages', state)
}

function build() {
  const sources = [
    join(root, 'tsconfig.base.json'),
    ...packageFolders().flatMap(name => filesOf(join(root, 'packages', name))),
  ]
  const state = digest(sources, '')
  if (readStamp('build') === state && existsSync(join(root, 'packages/cli/dist/main.js'))) return
  say('building …')
  if (run('npx', ['--no-install', 'tsc', '-b']) !== 0) stop('the build failed: the lines above say where.')
  if (existsSync(join(root, 'packages/web/vite.config.ts'))) {
    if (
      run('npx', [
        '--no-install',
        'vite',
        'build',
        '--logLevel',
        'error',
        'packages/web',
        '--config',
        'packages/web/vite.config.ts',
      ]) !== 0
    ) {
      stop('building the page failed: the lines above say where.')
    }
  }
  writeStamp('build', state)
}

/** The tests read the browser's path from the stamp; without one they say so and are counted as skipped. */
async function findBrowser() {
  const known = [
    process.env.CHROME_PATH,
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/usr/bin/google-chrome',
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  ]
  const present = () => known.find(path => path && existsSync(path))
  let found = present() ?? (await unpackBrowser())
  if (!found && installBrowser()) found = present()
  if (!found)
    say(
      'no browser found: the browser tests are skipped. Install Chromium or Chrome, or name one with CHROME_PATH.',
    )
  writeStamp('browser', found ?? '')
}

/** The browser that lies packed among the packages, with the few libraries it needs: Linux on x64, and no rights asked. */
async function unpackBrowser() {
  if (process.platform !== 'linux' || process.arch !== 'x64') return undefined
  const folder = join(stamps, 'packed-browser')
  const starter = join(folder, 'start.sh')
  if (!existsSync(starter)) {
    say('unpacking a browser for the tests (once) …')
    mkdirSync(folder, { recursive: true })
    // It unpacks itself into the folder for temporary files, which others sweep; its libraries it brings for this host only.
    Object.assign(process.env, { TMPDIR: folder, AWS_EXECUTION_ENV: 'AWS_Lambda_nodejs22.x' })
    const { default: packed } = await import('@sparticuz/chromium')
    const program = await packed.executablePath()
    const lines = [
      '#!/bin/sh',
      `export LD_LIBRARY_PATH="${join(folder, 'al2023/lib')}"`,
      `[ -d /etc/fonts ] || export FONTCONFIG_PATH="${join(folder, 'fonts')}"`,
      `exec "${program}" "$@"`,
    ]
    writeFileSync(starter, `${lines.join('\n')}\n`, { mode: 0o755 })
  }
  const tried = spawnSync(starter, ['--version'], { encoding: 'utf8' })
  if (tried.status === 0) return starter
  const why = (tried.stderr ?? '').split('\n')[0]
  say(`the packed browser does not start here${why ? `: ${why}` : ''}`)
  return undefined
}

/** Where this runs as root on Debian and its kin, as in a container. */
function installBrowser() {
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return false
  say('installing a browser for the tests (once) …')
  run('apt-get', ['update', '-qq'])
  run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], {
    DEBIAN_FRONTEND: 'noninteractive',
  })
  return true
}

function packageFolders() {
  return readdirSync(join(root, 'packages')).filter(name =>
    existsSync(join(root, 'packages', name, 'package.json')),
  )
}

/** Sources only: what a build leaves behind would make the next one build again. */
function filesOf(folder) {
  return readdirSync(folder, { withFileTypes: true })
    .filter(({ name }) => !made.has(name) && !name.endsWith('.tsbuildinfo') && join(folder, name) !== page)
    .flatMap(entry => (entry.isDirectory() ? filesOf(join(folder, entry.name)) : [join(folder, entry.name)]))
}

/** By content, not by time: a fresh clone's file times mean nothing. */
function digest(files, extra) {
  const hash = createHash('sha256').update(extra)
  for (const file of [...files].sort())
    if (existsSync(file)) hash.update(file.slice(root.length)).update(readFileSync(file))
  return hash.digest('hex')
}

function readStamp(name) {
  const file = join(stamps, name)
  return existsSync(file) ? readFileSync(file, 'utf8') : undefined
}

function writeStamp(name, state) {
  mkdirSync(stamps, { recursive: true })
  writeFileSync(join(stamps, name), state)
}

function run(command, args, more = {}) {
  // What npm handed to this script would make a nested npm behave like the outer one.
  const kept = /^npm_config_(registry|cache|nodedir|cafile)$/
  const environment = Object.fromEntries(
    Object.entries(process.env).filter(([name]) => !/^npm_(config|lifecycle)_/.test(name) || kept.test(name)),
  )
  const ran = spawnSync(command, args, {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...environment, ...more },
  })
  return ran.status ?? 1
}
