import { expect, test, turnTo, untilPlanned } from './club.ts'
import { readsWell } from './readable.ts'

test.use({ begins: 'settled' })

test('the manager picks a week by past years, sees where its figures come from, and takes it', async ({
  page,
  club,
}) => {
  await turnTo(page, club, '/fixtures')
  await page.getByRole('link', { name: /Pick the week of the renovation/u }).click()
  await expect(page.getByRole('heading', { level: 1, name: 'Pick the week' })).toBeVisible()
  await expect(page.getByRole('progressbar', { name: 'Reckoning the weeks' })).toBeVisible()
  const cards = page.locator('.week-card')
  await expect(cards).toHaveCount(3, { timeout: 110_000 })
  await expect(page.getByText('These years are drawn, not those of your course.')).toBeVisible()
  await expect(cards.first()).toContainText(/Finished by Friday in \d years? of 10/u)
  await expect(cards.first()).toContainText(/If it rains off: Mon \d+ \w+\./u)

  // The demo’s three fixtures lie in the week of 10 August, its first candidate; each is met while work goes on or while greens heal.
  await expect(page.locator('[data-part=week]')).toHaveCount(12)
  const first = page.locator('[data-part=week][data-id="2026-08-10"]')
  await expect(first).toHaveAttribute(
    'aria-label',
    /clash with Seniors’ nine-hole medal, Tarn Cup and 1 more/u,
  )
  await first.click()
  const panel = page.getByRole('dialog')
  await expect(panel.getByRole('heading', { name: 'Monday 10 Aug' })).toBeVisible()
  await expect(panel.getByRole('row')).toHaveCount(11)
  await readsWell(page)
  await page.keyboard.press('Escape')
  await expect(panel).toBeHidden()
  await page
    .locator('.week-table')
    .getByRole('button', { name: /Tarn Cup/u })
    .press('Enter')
  await expect(panel).toContainText('Seniors’ nine-hole medal on Thu 13 Aug: in the work in all 10 years')
  await page.keyboard.press('Escape')

  const taken = (await cards.first().getByRole('heading').innerText()).replace('Monday', 'Mon')
  await cards
    .first()
    .getByRole('button', { name: /^Take this week/u })
    .click()
  await expect(page.getByRole('heading', { level: 1, name: 'Plan' })).toBeVisible()
  await untilPlanned(page)
  await expect(page.getByText('Draft, not settled')).toBeVisible()
  await expect(page.getByRole('main')).toContainText(taken)
})

test('a reckoning that is stopped keeps the weeks that were done, and says when it no longer holds', async ({
  page,
  club,
}) => {
  await page.setViewportSize({ width: 390, height: 844 })
  await turnTo(page, club, '/weeks')
  await expect(page.locator('[data-part=week]').first()).toBeVisible({ timeout: 90_000 })
  await page.getByRole('button', { name: 'Stop' }).click()
  await expect(page.getByText('Stopped:')).toBeVisible()
  await expect(page.locator('.week-card').first()).toBeVisible()
  await readsWell(page)
  await page.getByText('What is asked, and how it is reckoned').click()
  await page.getByLabel('Weeks ahead').fill('1')
  await page.getByLabel('Past years, at most').fill('2')
  await page.getByLabel('Past years, at most').blur()
  await expect(page.getByText('Something has changed since:')).toBeVisible()
  await page.getByRole('button', { name: 'Reckon again' }).first().click()
  await expect(page.locator('.week-card')).toHaveCount(1, { timeout: 90_000 })
  await expect(page.locator('.week-card')).toContainText(/years? of 2|all 2 years/u)
})
