/** Something is wrong with a sump: ticked, what must stop at the top, written down, on Today, answered for. */
import { expect, test } from 'vitest'
import { fileBrowser, lookAt, openPage, phone, servedFile } from './on-a-screen.ts'

const browser = fileBrowser()

const shop = {
  format: 'sumpbook-book/1',
  shop: { name: 'Test works', timeZone: 'Europe/Berlin', units: 'metric', currency: 'EUR' },
  fluids: [{ id: 'f1', name: 'Semi 1', brixFactor: 1.6, limits: { concentration: { low: 6, target: 8, high: 10 } } }],
  sumps: [{ id: 's1', name: 'Mill 1', fluid: 'f1', fillVolume: 200, capacity: 240 }],
}

const servedShop = () => servedFile(shop)

test('a danger that is ticked stands at the top, is written down, stays on Today, and leaves it once answered for', async () => {
  const { address } = await servedShop()
  const page = await openPage(browser())
  await page.goto(`${address}/sumps/s1`)
  await page.getByRole('link', { name: 'Something wrong with it?' }).click()
  await page.getByRole('heading', { name: 'What is wrong with Mill 1?' }).waitFor()
  await page.getByRole('button', { name: /^Smell/ }).click()
  await page.getByLabel('Rotten eggs?').check()
  expect(await page.getByRole('alert').textContent()).toContain('do not start pumps')
  expect(await page.locator('.causes h3').first().textContent()).toContain('Growth without air')
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(phone.width)
  await lookAt(page, 'wrong-ticked', 'whole')
  await page.getByLabel('strong', { exact: true }).check()
  await page.getByRole('button', { name: 'Write it down' }).click()
  await page.getByRole('heading', { name: 'To be answered for' }).waitFor()
  await page.goto(address)
  const due = page.getByRole('article', { name: /See to rotten-egg smell at Mill 1/ })
  await due.waitFor()
  // Whoever comes by on the round is told as well.
  await page.goto(`${address}/round/s1`)
  await page.locator('.stop').getByRole('link', { name: 'See to rotten-egg smell at Mill 1' }).waitFor()
  await lookAt(page, 'wrong-open-at-stop')
  await page.goto(address)
  await due.getByRole('link', { name: 'Go there' }).click()
  await page.getByRole('button', { name: 'Write down what was done' }).click()
  expect(await page.getByText('Say in a few words what was done.').isVisible()).toBe(true)
  await page.getByLabel('What was done about it').fill('Air checked, oil skimmed')
  await page.getByRole('button', { name: 'Write down what was done' }).click()
  await page.getByRole('heading', { name: 'To be answered for' }).waitFor({ state: 'detached' })
  await page.getByRole('link', { name: 'Today', exact: true }).click()
  await page.getByRole('heading', { name: 'Today' }).waitFor()
  await due.waitFor({ state: 'detached' })
})

test('on the round a danger comes into view at once, and leads to the page of causes', async () => {
  const { address } = await servedShop()
  const page = await openPage(browser())
  await page.goto(`${address}/round/s1`)
  await page.getByRole('button', { name: /Look · smell · oil/ }).click()
  await page.getByLabel('eggs', { exact: true }).check()
  const alert = page.getByRole('alert')
  await alert.waitFor()
  await lookAt(page, 'wrong-on-round')
  const box = (await alert.getByRole('heading').boundingBox())!
  expect(box.y).toBeGreaterThanOrEqual(0)
  expect(box.y + box.height).toBeLessThan(phone.height)
  await page.getByRole('button', { name: 'Write it down and look for the cause' }).click()
  await page.getByRole('heading', { name: 'What is wrong with Mill 1?' }).waitFor()
  await page.getByText('rotten-egg smell').first().waitFor()
})
