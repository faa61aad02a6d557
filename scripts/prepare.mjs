#!/usr/bin/env node
/**
 * Makes a fresh clone ready: packages as the lock file says, a build, and (with --browser) a chromium for the tests.
 * Each part is skipped when a stamp shows that nothing it depends on has changed. Uses only what comes with Node.
 */
import { createHash } from 'node:crypto'
import { execFileSync } from 'node:child_process'
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

const root = join(import.meta.dirname, '..')
const modules = join(root, 'node_modules')
const rooms = ['engine', 'journal', 'present', 'server', 'cli', 'web']

const say = (text) => console.log(`prepare: ${text}`)

const run = (command, args) =>
  execFileSync(command, args, { cwd: root, stdio: 'inherit', shell: process.platform === 'win32' })

const hashOf = (parts) => {
  const hash = createHash('sha256')
  for (const part of parts) hash.update(part).update('\0')
  return hash.digest('hex')
}

/** Runs a step unless its stamp already holds the same hash. */
const once = (name, hash, work) => {
  const stamp = join(modules, `.swardwright-${name}`)
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === hash) return
  work()
  mkdirSync(modules, { recursive: true })
  writeFileSync(stamp, hash)
}

const sourceFiles = (folder) =>
  readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name)
    if (entry.isDirectory())
      return ['node_modules', 'dist', 'e2e'].includes(entry.name) ? [] : sourceFiles(path)
    return /\.(ts|tsx|css|html|json|svg|geojson|webmanifest)$/u.test(entry.name) ? [path] : []
  })

const install = () => {
  const lock = readFileSync(join(root, 'package-lock.json'))
  once('installed', hashOf([lock, process.versions.modules, process.platform, process.arch]), () => {
    say('installing packages (once)')
    run('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error'])
  })
}

const build = () => {
  const files = [...rooms, 'examples']
    .flatMap((room) => sourceFiles(join(root, room)))
    .concat(join(root, 'tsconfig.base.json'))
  const built =
    existsSync(join(root, 'cli/dist/main.js')) && existsSync(join(root, 'web/dist/app/index.html'))
  // Without the built files the stamp never fits, so that a removed dist is made again.
  const hash = built ? hashOf(files.flatMap((file) => [file, readFileSync(file)])) : ''
  once('built', hash, () => {
    say('building')
    run('npm', ['run', '-s', 'build'])
  })
}

const findBrowser = () =>
  [
    process.env.CHROMIUM_PATH,
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/usr/bin/google-chrome',
  ].find((path) => path !== undefined && existsSync(path) && statSync(path).isFile())

const browser = () => {
  if (findBrowser() !== undefined) return
  const isDebianRoot = existsSync('/usr/bin/apt-get') && process.getuid?.() === 0
  if (!isDebianRoot) {
    console.error(
      'prepare: the browser tests need chromium. Install it (on Debian: apt-get install chromium) or set CHROMIUM_PATH to one that is there.',
    )
    process.exit(2)
  }
  say("installing Debian's chromium (once)")
  run('apt-get', ['update', '-qq'])
  run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium', 'fonts-liberation'])
}

const [major = 0, minor = 0] = process.versions.node.split('.').map(Number)
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`prepare: Node ${process.versions.node} is too old; 20.19 or later is needed`)
  process.exit(2)
}
install()
build()
if (process.argv.includes('--browser')) browser()
