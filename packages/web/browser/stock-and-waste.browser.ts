/** Stock and waste on the example shop, in a real browser on a real server, at the width of a phone and of a desk. */
import { expect, test } from 'vitest'
import { fileBrowser, fileExample, isWide, openPage } from './on-a-screen.ts'

const browser = fileBrowser()
const served = fileExample()

const openAt = (width: number, place: string) =>
  openPage(browser(), served().address + place, { viewport: { width, height: 800 } })

test('drums that came, were counted and ordered stand in the sentence at once, on a phone', async () => {
  const page = await openAt(360, '/stock')
  const oil = page.locator('section[aria-label="Straight oil 22"]')
  await oil.getByRole('button', { name: 'Counted' }).click()
  await oil.getByLabel('Full drums').fill('1')
  await oil.getByLabel('Left in open ones').fill('50')
  await oil.locator('form').getByRole('button', { name: 'Counted' }).click()
  await oil.getByText(/^250\sL in \d lots?/).waitFor()
  await oil.getByRole('button', { name: 'Received' }).click()
  await oil.getByLabel('Drums', { exact: true }).fill('2')
  await oil.getByLabel('Lot', { exact: true }).fill('O-999')
  await oil.locator('form').getByRole('button', { name: 'Received' }).click()
  await oil.getByText(/^650\sL in \d lots/).waitFor()
  await oil.getByRole('cell', { name: 'O-999' }).waitFor()
  await oil.getByRole('button', { name: 'Ordered' }).click()
  await oil.getByLabel('Drums', { exact: true }).fill('1')
  await oil.locator('form').getByRole('button', { name: 'Ordered' }).click()
  await oil.getByText(/200\sL on the way/).waitFor()
  expect(await isWide(page)).toBe(false)
})

test('a delivery without drums is a fault at its field, and nothing is written', async () => {
  const page = await openAt(360, '/stock')
  const grey = page.locator('section[aria-label="Grey semi 25"]')
  await grey.getByRole('button', { name: 'Received' }).click()
  await grey.locator('form').getByRole('button', { name: 'Received' }).click()
  await grey.getByText('Found nothing; expected a number.').waitFor()
})

test('settings of a fluid are taken, and no longer assumed', async () => {
  const page = await openAt(1200, '/stock')
  const clear = page.locator('section[aria-label="Clear synthetic 10"]')
  await clear.getByText('What stands behind it').click()
  await clear.getByText('assumed').first().waitFor()
  await clear.getByRole('button', { name: 'Settings' }).click()
  await clear.getByLabel('Drum, litres').fill('60')
  await clear.getByRole('button', { name: 'Save' }).click()
  await clear.locator('dd', { hasText: /^60\sL$/ }).waitFor()
})

test('a pickup beyond what is there is asked once, then taken and told; its document comes later', async () => {
  const page = await openAt(360, '/stock/waste')
  const oil = page.locator('section[aria-label="Oil drum"]')
  await oil.getByRole('button', { name: 'Fetched' }).click()
  await oil.getByLabel('Fetched, litres').fill('900')
  await oil.locator('form').getByRole('button', { name: 'Fetched' }).click()
  await oil.getByText(/The amount on the paper counts/).waitFor()
  await oil.getByRole('button', { name: 'It is right, write it down' }).click()
  await oil.getByText(/took 900\sL, and the book knew of/).waitFor()
  await oil.getByText(/^empty\./).waitFor()
  await oil.getByRole('button', { name: 'Write its number' }).click()
  const document = oil.getByRole('form', { name: 'The number of its document' })
  await document.getByLabel('Document number').fill('N-2026-900')
  await document.getByRole('button', { name: 'Write it down' }).click()
  await oil.getByText('document missing', { exact: true }).waitFor({ state: 'detached' })
  expect(await isWide(page)).toBe(false)
})

test('a container is set up with a proposed term, and 12 01 10* on emulsion is questioned', async () => {
  const page = await openAt(1200, '/stock/waste')
  await page.getByRole('button', { name: 'Set up a waste container' }).click()
  const form = page.locator('form[aria-label="A waste container"]')
  await form.getByLabel('Name').fill('Wash tank')
  await form.getByLabel('Code').fill('120110*')
  await form.getByLabel('It may wait').selectOption({ index: 1 })
  expect(await form.getByLabel('By what').inputValue()).toBe('40 CFR 262.17(a)')
  await form.getByRole('button', { name: 'Save' }).click()
  const tank = page.locator('section[aria-label="Wash tank"]')
  await tank.getByText(/is for synthetic oils/).waitFor()
  await tank.getByText(/It may wait 90 days from the first drop on/).waitFor()
})
