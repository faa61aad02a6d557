import { expect, test, turnTo, untilSent } from './club.ts'

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

for (const [why, words] of [
  ['too-old', 'This app is too old for the server'],
  ['clock', 'The clock of this device is more than a day off'],
] as const)
  test(`an entry that the server refuses as ${why} stays, and the app says in plain words what to do`, async ({
    page,
    club,
  }) => {
    await turnTo(page, club, '/green/g02')
    await untilSent(page)
    await page.route('**/entries', async (route) => {
      if (route.request().method() !== 'POST') return route.continue()
      const { entries } = route.request().postDataJSON() as { entries: { id: string }[] }
      const refused = entries.map(({ id }) => ({ id, why }))
      return route.fulfill({ json: { accepted: [], refused, cursor: '0' } })
    })
    await page.getByLabel('Area', { exact: true }).fill('434')
    await page.getByLabel('Area', { exact: true }).blur()
    const told = page.getByRole('link', { name: '1 change needs attention' })
    await expect(told).toBeVisible()
    await told.click()
    const attention = page.locator('#attention')
    await expect(attention).toContainText('The course was set up or changed.')
    await expect(attention).toContainText(words)
    // Kept here all the same, also after the page is opened anew.
    await page.goto(`${club.address()}/green/g02`)
    await expect(page.getByLabel('Area', { exact: true })).toHaveValue('434')
    await expect(page.getByRole('link', { name: '1 change needs attention' })).toBeVisible()
  })
