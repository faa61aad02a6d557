import { expect, test, turnTo, untilSent } from './club.ts'
import { faultsOf } from './readable.ts'

test('the manager opens the members’ page, hands its address on, changes what it says, and takes it back', async ({
  page,
  club,
  browser,
}, info) => {
  await turnTo(page, club, '/members')
  await expect(page.locator('.members-shown')).toContainText('All greens are in play.')
  await page.getByRole('button', { name: 'Open the page' }).click()
  await expect(page.getByRole('img', { name: 'Members’ page' })).toBeVisible()
  const address = await page.getByRole('textbox', { name: 'Copy the link' }).inputValue()
  expect(address).toMatch(/\/greens\/[\w-]{43}$/u)

  await page.getByRole('textbox', { name: 'A word to members' }).fill('Bear with us on Monday.')
  await page.getByRole('button', { name: 'Put it on the page' }).click()
  await page.getByText('What golfers play').click()
  await page.getByLabel('3 Thimble').selectOption('temporary green')
  await expect(page.locator('.members-shown')).toContainText('Temporary green')
  await untilSent(page)

  // An old phone: no scripts, no account.
  const context = await browser.newContext({
    javaScriptEnabled: false,
    viewport: { width: 390, height: 844 },
  })
  const phone = await context.newPage()
  await phone.goto(address)
  await expect(phone.getByRole('heading', { name: 'The greens' })).toBeVisible()
  await expect(phone.locator('body')).toContainText('Bear with us on Monday.')
  await expect(phone.locator('body')).toContainText('Temporary green')
  await phone.screenshot({ path: info.outputPath('members-390.png'), fullPage: true })
  const width = await phone.evaluate(() => document.documentElement.scrollWidth)
  expect(width).toBeLessThanOrEqual(390)
  await context.close()

  // A page object of a PDF says `/Type /Page`: one sheet for the board of the clubhouse.
  const board = await page.context().newPage()
  await board.goto(address)
  const pdf = await board.pdf({ preferCSSPageSize: true })
  expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/gu)).toHaveLength(1)
  expect(await faultsOf(board)).toEqual([])
  await board.close()
  expect(await faultsOf(page)).toEqual([])
  await page.screenshot({ path: info.outputPath('manager-1280.png'), fullPage: true })
  await page.setViewportSize({ width: 390, height: 844 })
  await page.screenshot({ path: info.outputPath('manager-390.png'), fullPage: true })

  await page.getByRole('button', { name: 'New address' }).click()
  await expect(page.getByRole('textbox', { name: 'Copy the link' })).not.toHaveValue(address)
  expect((await page.request.get(address)).status()).toBe(404)
  const fresh = await page.getByRole('textbox', { name: 'Copy the link' }).inputValue()
  expect((await page.request.get(fresh)).status()).toBe(200)
  await page.getByRole('button', { name: 'Close the page' }).click()
  await expect(page.getByText('The page is closed')).toBeVisible()
  expect((await page.request.get(fresh)).status()).toBe(404)
})
