import { expect, test, turnTo } from './club.ts'

test.use({ begins: 'settled' })

test('tines are counted in the stores, and too few of them leave greens out of the plan, told in words', async ({
  page,
  club,
}) => {
  await turnTo(page, club, '/stores')
  const tines = page.getByRole('region', { name: 'Tine sets' })
  await expect(tines.getByRole('heading', { name: 'Hollow tines, 10 mm (8 mm inside)' })).toBeVisible()
  await expect(tines.getByText('Stock and deliveries are enough for the prescription.')).toHaveCount(2)
  // The smaller tines wear a quarter of a set on three greens; a tenth is enough for one at most.
  await tines.getByText('Stock and deliveries', { exact: true }).last().click()
  const stock = tines.getByLabel(/^Sets in stock now/u)
  await stock.fill('0.1')
  await stock.press('Tab')
  await expect(tines.getByText('Too few for the prescription')).toBeVisible()
  await page.getByRole('link', { name: 'Plan', exact: true }).first().click()
  await page.getByRole('button', { name: 'Plan again' }).first().click()
  await expect(page.getByText(/there are not enough tines \(it wears out/u).first()).toBeVisible({
    timeout: 120_000,
  })
})
