import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { holdClock } from '../../web/e2e/journal.ts'
import { startClubServer } from '../../web/e2e/server.ts'
import { launched, throttle } from './fresh-page.ts'
import { LATENCY_GOAL_MS, observeEvents, responseOf, type Response } from './latency-events.ts'
import { TAPS, type Tap } from './latency-taps.ts'
import { median } from './median.ts'

const ROUNDS = 9
/** A phone's core is taken as a quarter of this one, as browsers' throttling does. */
const THROTTLE = 4
const PHONE = { width: 390, height: 844 }
/** In the middle of the demo's first morning. */
const NOW = '2026-08-10T08:30:00+01:00'

/** A settled plan, the clock held on its first morning, a person at the post who has read the sheet. */
const onWorkingDay = async (page: Page, address: string): Promise<void> => {
  await page.goto(`${address}/plan`)
  await page.getByText('The checker finds nothing wrong').waitFor({ timeout: 180_000 })
  await page.getByRole('button', { name: 'Settle this plan' }).click()
  await page.getByText('Draft, not settled').waitFor({ state: 'detached' })
  await page.waitForTimeout(2_000)
  await holdClock(address, NOW)
  await page.goto(`${address}/crew`)
  await page.getByRole('button', { name: 'Maren' }).click()
  await page.getByRole('button', { name: 'I have read it' }).click()
  await page.locator('.thumb button.primary').waitFor()
}

const PEER = `
  const button = document.createElement('button')
  button.id = 'peer'
  button.textContent = 'peer'
  button.style.cssText = 'position:fixed;top:0;left:0;z-index:99;min-height:48px'
  document.body.append(button)
`

/** A button that does nothing, on the same page: what a press costs at the least. */
const peer: Pick<Tap, 'ready' | 'act'> = {
  ready: async (page) => {
    await page.evaluate(`if (document.getElementById('peer') === null) {${PEER}}`)
  },
  act: async (page) => {
    await page.mouse.move(12, 12)
    await page.mouse.down()
    await page.mouse.up()
  },
}

const roundsOf = async (
  page: Page,
  tap: Pick<Tap, 'ready' | 'act'>,
  rounds: number,
): Promise<readonly Response[]> => {
  const responses: Response[] = []
  // The first round warms the page up and is not counted.
  for (let round = 0; round <= rounds; round += 1) {
    await tap.ready(page, round)
    const response = await responseOf(page, () => tap.act(page, round))
    if (round > 0) responses.push(response)
  }
  return responses
}

const line = (name: string, taps: readonly Response[], peers: readonly Response[]): string => {
  const [own, least] = [taps, peers].map((all) => median(all.map(({ eventMs }) => eventMs)))
  const worst = Math.max(...taps.map(({ eventMs }) => eventMs))
  const block = median(taps.map(({ blockMs }) => blockMs))
  const ratio = (own ?? NaN) / (least ?? NaN)
  const columns = [own, worst, least].map((ms) => `${Math.round(ms ?? NaN)} ms`.padStart(8))
  return `${name.padEnd(28)}${columns.join('')}${ratio.toFixed(1).padStart(7)}${`${Math.round(block)} ms`.padStart(9)}`
}

const measure = async (page: Page, address: string, rounds: number): Promise<void> => {
  await onWorkingDay(page, address)
  await throttle(page, THROTTLE)
  process.stdout.write(
    `Chromium, processor at a quarter, ${rounds} rounds; from the press to the next picture; goal ${LATENCY_GOAL_MS} ms\n` +
      `${''.padEnd(28)}  median   worst   empty  ratio   block\n`,
  )
  for (const tap of TAPS) {
    await page.goto(`${address}${tap.path}`)
    await page.locator('main > header h1').waitFor()
    await page.waitForTimeout(3_000)
    const own = await roundsOf(page, tap, rounds)
    await tap.ready(page, 0)
    process.stdout.write(`${line(tap.name, own, await roundsOf(page, peer, rounds))}\n`)
  }
}

/** Measures how soon the app answers what a person presses most, beside an empty button on the same page. `--rounds N` (default 9). */
export const run = async (argv: readonly string[]): Promise<number> => {
  const at = argv.indexOf('--rounds')
  const rounds = at === -1 ? ROUNDS : Number(argv[at + 1])
  if (!Number.isInteger(rounds) || rounds < 1) {
    process.stderr.write('--rounds is followed by a whole number of rounds, 1 or more\n')
    return 2
  }
  const dataDir = await mkdtemp(join(tmpdir(), 'swardwright-bench-'))
  const club = await startClubServer(dataDir)
  const browser = await launched()
  try {
    const page = await browser.newPage({ viewport: PHONE, locale: 'en-GB', timezoneId: 'Europe/London' })
    await observeEvents(page)
    await measure(page, club.address, rounds)
  } finally {
    await browser.close()
    await club.stop()
    await rm(dataDir, { recursive: true, force: true })
  }
  return 0
}
