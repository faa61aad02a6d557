import type { Page } from '@playwright/test'
import { expect, test, turnTo } from './club.ts'
import { readsWell } from './readable.ts'
import { onWorkingDay } from './working-day.ts'

test.use({ begins: 'settled' })

/** Height in px of each button of the page that shows. */
const buttonHeights = (page: Page): Promise<readonly number[]> =>
  page
    .locator('main button:visible')
    .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().height))

test('a problem on the crew’s phone reaches the board, the day is made again there, and the phone tells what changed', async ({
  page,
  club,
  browser,
}) => {
  test.setTimeout(240_000)
  await onWorkingDay(page, club, '08:30')
  await readsWell(page)

  const phone = await (await browser.newContext({ viewport: { width: 360, height: 740 } })).newPage()
  await turnTo(phone, club, '/crew')
  await phone.getByRole('button', { name: 'Maren' }).click()
  await expect(phone.getByRole('heading', { name: 'Before you begin' })).toBeVisible()
  await readsWell(phone)
  await phone.getByRole('button', { name: 'I have read it' }).click()
  await expect(phone.getByText('Set the machine')).toBeVisible()
  await readsWell(phone)
  expect(Math.min(...(await buttonHeights(phone)))).toBeGreaterThanOrEqual(56)

  // One tap, and back.
  const bigTap = phone.locator('.thumb button.primary')
  const first = (await bigTap.textContent()) ?? ''
  await bigTap.click()
  await expect(bigTap).not.toHaveText(first)
  await phone.getByRole('button', { name: 'Undo' }).click()
  await expect(bigTap).toHaveText(first)

  await phone.getByRole('button', { name: 'Problem' }).click()
  await phone.getByRole('button', { name: 'A machine is out' }).click()
  await phone.getByRole('button', { name: 'Corer', exact: true }).click()
  await expect(phone.getByText(/told to the manager/u)).toBeVisible()

  await expect(page.getByText('Corer out')).toBeVisible()
  await expect(page.getByRole('heading', { name: 'The day has moved' })).toBeVisible({ timeout: 60_000 })
  await expect(page.getByRole('region', { name: 'The day has moved' })).toContainText(
    'because a machine is out',
  )
  await readsWell(page)
  await page.getByRole('button', { name: 'Make this the plan' }).click()
  await expect(page.getByRole('heading', { name: 'The day has moved' })).toHaveCount(0, { timeout: 60_000 })
  await expect(phone.getByRole('heading', { name: 'The plan has changed' })).toBeVisible({ timeout: 60_000 })
  await readsWell(phone)
  await phone.getByRole('button', { name: 'Seen' }).click()
  await expect(phone.getByRole('heading', { name: 'The plan has changed' })).toHaveCount(0)
  await phone.context().close()
})

test('a step broken off and sand that is short, each told in a few presses, reach the board with their figures', async ({
  page,
  club,
  browser,
}) => {
  test.setTimeout(240_000)
  await onWorkingDay(page, club, '08:30')
  const phone = await (await browser.newContext({ viewport: { width: 360, height: 740 } })).newPage()
  await turnTo(phone, club, '/crew')
  await phone.getByRole('button', { name: 'Maren' }).click()
  await phone.getByRole('button', { name: 'I have read it' }).click()

  await phone.getByText('Steps on this green').click()
  await phone
    .getByRole('button', { name: /^Start: /u })
    .first()
    .click()
  await phone.getByRole('button', { name: 'Broken off' }).first().click()
  const dialog = phone.getByRole('dialog')
  await expect(dialog.getByText('Why is it broken off?')).toBeVisible()
  await readsWell(phone)
  await dialog.getByRole('button', { name: 'Rain' }).click()
  await expect(phone.getByText(/, broken off$/u).first()).toBeVisible()
  await expect(phone.getByRole('button', { name: /^Go on with it: /u })).toBeVisible()
  expect(Math.min(...(await buttonHeights(phone)))).toBeGreaterThanOrEqual(56)
  await expect(page.getByText(/broken off: /u)).toBeVisible({ timeout: 60_000 })

  await phone.getByRole('button', { name: 'Problem' }).click()
  await phone.getByRole('button', { name: 'Sand is short' }).click()
  await phone.getByRole('button', { name: 'Damp sand' }).click()
  await readsWell(phone)
  expect(Math.min(...(await buttonHeights(phone)))).toBeGreaterThanOrEqual(56)
  await phone.getByRole('button', { name: '2 t', exact: true }).click()
  await expect(phone.getByText('Damp sand: 2 t left: told to the manager')).toBeVisible()
  await expect(page.getByText('Damp sand: 2 t left')).toBeVisible()
  await expect(page.getByRole('region', { name: 'The day has moved' })).toContainText(
    'the sand that it still needs comes too late',
    { timeout: 60_000 },
  )
  await readsWell(page)
  await phone.context().close()
})
