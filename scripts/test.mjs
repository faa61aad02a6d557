#!/usr/bin/env node
/**
 * Runs every check and test, and closes with one line: `N passed, N failed`.
 * A check (types, lint, format, dead code) counts as one test; unit and browser tests are counted one by one.
 */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

const root = join(import.meta.dirname, '..')
const reports = mkdtempSync(join(tmpdir(), 'swardwright-test-'))

const run = (args, env = {}) =>
  spawnSync('npx', ['--no-install', ...args], {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, ...env },
    shell: process.platform === 'win32',
  }).status ?? 1

/** A check that passes or fails as a whole. */
const check = (name, args) => {
  console.log(`\n== ${name}`)
  const passed = run(args) === 0
  return { passed: passed ? 1 : 0, failed: passed ? 0 : 1 }
}

/** A test run whose report is read; a run that leaves no report, or that ran nothing, counts as one failure. */
const tests = (name, args, env, count) => {
  console.log(`\n== ${name}`)
  const status = run(args, env)
  try {
    const { passed, failed } = count()
    if (passed + failed === 0) return { passed: 0, failed: 1 }
    return { passed, failed: failed === 0 && status !== 0 ? 1 : failed }
  } catch (error) {
    console.error(`${name} left no report: ${error instanceof Error ? error.message : String(error)}`)
    return { passed: 0, failed: 1 }
  }
}

const json = (file) => JSON.parse(readFileSync(join(reports, file), 'utf8'))

const results = [
  check('types', ['tsc', '-b']),
  check('lint, dependency directions, import cycles', ['oxlint', '--type-aware', '--deny-warnings']),
  check('format', ['prettier', '--check', '.', '--log-level=warn']),
  check('dead code', ['knip']),
  tests(
    'unit, property and API tests',
    ['vitest', 'run', '--reporter=dot', '--reporter=json', `--outputFile=${join(reports, 'unit.json')}`],
    {},
    () => {
      const report = json('unit.json')
      return { passed: report.numPassedTests, failed: report.numFailedTests + report.numFailedTestSuites }
    },
  ),
  tests(
    'browser tests',
    ['playwright', 'test', '--reporter=line,json'],
    { PLAYWRIGHT_JSON_OUTPUT_NAME: join(reports, 'browser.json') },
    () => {
      const { stats } = json('browser.json')
      return { passed: stats.expected + stats.flaky, failed: stats.unexpected }
    },
  ),
]
rmSync(reports, { recursive: true, force: true })

const total = (key) => results.reduce((sum, result) => sum + result[key], 0)
console.log(`\n${total('passed')} passed, ${total('failed')} failed`)
process.exitCode = total('failed') === 0 ? 0 : 1
