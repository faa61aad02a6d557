import { expect, test, turnTo, untilSent } from './club.ts'

test.use({ begins: 'settled' })

test('a change survives a reload, a restart of the server, and reaches another device', async ({
  page,
  club,
  browser,
}) => {
  await turnTo(page, club, '/green/g03')
  await page.getByLabel('Area', { exact: true }).fill('456')
  await page.getByLabel('Area', { exact: true }).blur()
  await untilSent(page)
  await page.reload()
  await expect(page.getByLabel('Area', { exact: true })).toHaveValue('456')

  await club.restart()
  const other = await browser.newContext()
  const phone = await other.newPage()
  await phone.goto(`${club.address()}/green/g03`)
  await expect(phone.getByLabel('Area', { exact: true })).toHaveValue('456')

  // What one device records shows on the other by itself.
  await page.reload()
  await page.getByLabel('Area', { exact: true }).fill('470')
  await page.getByLabel('Area', { exact: true }).blur()
  await expect(phone.getByLabel('Area', { exact: true })).toHaveValue('470')
  await other.close()
})

test('what is recorded while the server is away is kept, told in plain words, and sent later', async ({
  page,
  club,
}) => {
  await turnTo(page, club, '/green/g02')
  await untilSent(page)
  await club.stop()
  await page.getByLabel('Area', { exact: true }).fill('433')
  await page.getByLabel('Area', { exact: true }).blur()
  await expect(page.getByText(/1 change kept here, not sent yet/u)).toBeVisible()
  await club.restart()
  await untilSent(page)
})
