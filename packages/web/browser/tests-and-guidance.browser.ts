/** Guidance, tests and samples, in a real browser on a phone's width: chosen, typed, dipped, read in. */
import { expect, test } from 'vitest'
import { fileBrowser, fileExample, isWide, lookAt, openPage } from './on-a-screen.ts'

const browser = fileBrowser()
const served = fileExample()

const openPhone = (place: string) => openPage(browser(), served().address + place)

test('guidance is chosen with its source in sight, and a looser value of the shop is said not to count', async () => {
  const page = await openPhone('/shop/guidance')
  // The example shop has chosen one.
  await page.getByText('The shop goes by Germany').waitFor()
  await page.getByRole('button', { name: /^Go by it: None/ }).click()
  await page.getByText('None is chosen.').waitFor()
  expect(await isWide(page)).toBe(false)
  const classes = page.getByRole('region', { name: 'Dip slide: classes' })
  expect(await classes.textContent()).toMatch(/under 10,000 good.*read 28 Nov 2026.*under 1000 good/s)

  await page.getByRole('button', { name: /^Go by it: Germany/ }).click()
  await page.getByText('The shop goes by Germany').waitFor()
  const own = page.getByRole('form', { name: 'The shop’s own values' })
  await own.getByLabel('pH, every … days').fill('14')
  await own.getByRole('button', { name: 'Write it down' }).click()
  await page.getByText('the shop’s own 14 days are longer than the 7 of the guidance').waitFor()
  await lookAt(page, 'guidance', 'whole')
})

test('nitrite over its limit, typed at a sump, is named there and on Today with its rule', async () => {
  const page = await openPhone('/sumps/mill7#tests')
  const form = page.getByRole('form', { name: 'Write a test down' })
  await form.getByLabel('Nitrite, mg/L').fill('25-50')
  await form.getByRole('button', { name: 'Write it down' }).click()
  const findings = page.getByRole('list', { name: 'What the last results ask for' })
  await findings.getByText(/Nitrite 25 to 50\smg\/L, over the limit of 20\smg\/L/).waitFor()
  expect(await findings.textContent()).toContain('TRGS 611')
  expect(await isWide(page)).toBe(false)

  await page.goto(served().address)
  const due = page.getByRole('article', { name: 'Nitrite is over its limit in Mill 7' })
  await due.getByText(/edition May 2007/).waitFor()
})

test('a strip typed wrongly is a fault at its field, and nothing is written', async () => {
  const page = await openPhone('/sumps/mill5#tests')
  const form = page.getByRole('form', { name: 'Write a test down' })
  await form.getByLabel('pH').fill('15')
  await form.getByRole('button', { name: 'Write it down' }).click()
  expect(await form.getByRole('alert').textContent()).toContain('Found 15')
})

test('a slide is dipped, waits, is read in early, and what that is worth is said', async () => {
  const page = await openPhone('/tests/samples')
  await page.getByLabel('Sump it was taken from').selectOption({ label: 'Mill 5' })
  await page.getByRole('button', { name: 'Write it down' }).click()
  const slide = page.getByRole('article', { name: 'dip slide of Mill 5' })
  await slide.getByText('To be read 40 to 80 hours after it was taken.').waitFor()
  await slide.getByRole('button', { name: /^Read it.*dip slide/ }).click()
  await slide.getByRole('button', { name: /under 10³/ }).click()
  expect(await isWide(page)).toBe(false)
  await lookAt(page, 'samples', 'whole')
  await slide.getByRole('button', { name: 'Write it down' }).click()
  await slide.getByText(/it says nothing yet/).waitFor()
})

test('a look at all sumps is one tap, and then none is due today', async () => {
  const page = await openPhone('/tests')
  const all = page.getByRole('button', { name: /^Looked and smelt at all/ })
  await all.waitFor()
  expect(await isWide(page)).toBe(false)
  await all.click()
  await all.waitFor({ state: 'detached' })
})
