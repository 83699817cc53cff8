/** Put off with a reason and an end, brought back, a note to the next shift read, a dose refused: in a browser, at a phone's width. */
import { expect, test } from 'vitest'
import { fileBrowser, openPage, servedFile } from './on-a-screen.ts'

const browser = fileBrowser()

const at = (hoursAgo: number) => new Date(Date.now() - hoursAgo * 3_600_000).toISOString()
const id = (n: number) => `01900000-0000-7000-8000-${String(n).padStart(12, '0')}`
const book = () => ({
  format: 'sumpbook-book/1',
  shop: {
    ...{ name: 'Invented works', timeZone: 'Europe/Berlin', units: 'metric', workDays: [1, 2, 3, 4, 5, 6, 7] },
    additives: [
      { id: 'b3', name: 'Biocide 3', kind: 'biocide', dose: { low: 1, high: 2, unit: 'mL/L' }, minimumDays: 7 },
    ],
  },
  fluids: [{ id: 'f1', name: 'Semi 1', brixFactor: 1.6, limits: { concentration: { low: 6, target: 8, high: 10 } } }],
  waters: [{ id: 'di', name: 'Deionised water', kind: 'deionised', hardness: 5 }],
  sumps: [{ id: 's1', name: 'Mill 1', fluid: 'f1', fillVolume: 200, capacity: 240, minVolume: 60 }],
  entries: [
    { id: id(1), at: at(60), kind: 'charge', sump: 's1', volume: 200, strength: 6.4, water: 'di' },
    { id: id(2), at: at(0.4), kind: 'reading', sump: 's1', brix: 3.4, volume: 170, pumps: 'stopped' },
  ],
})

const served = () => servedFile(book())

test('a line is put off with its reason and comes back when it is taken up again', async () => {
  const page = await openPage(browser())
  await page.goto((await served()).address)
  const line = page.getByRole('article', { name: 'Mill 1' })
  await line.getByRole('button', { name: 'Put off' }).click()
  const form = page.getByRole('form', { name: 'Put off: Mill 1' })
  await form.getByRole('button', { name: 'Put it off' }).click()
  await form.getByText('Found nothing; expected a reason').waitFor()
  await form.getByLabel('Why is it put off?').fill('pump is out')
  await form.locator('label', { hasText: 'a week' }).click()
  await form.getByRole('button', { name: 'Put it off' }).click()
  await page.getByText('1 put off', { exact: true }).click()
  await page.getByText(/Put off until .*: pump is out\./).waitFor()
  expect(await line.count()).toBe(0)
  expect(await page.evaluate(() => document.documentElement.scrollWidth > innerWidth)).toBe(false)
  await page.getByRole('button', { name: 'Bring it back' }).click()
  await line.waitFor()
})

test('a note to the next shift begins from what is open, and is read by somebody', async () => {
  const page = await openPage(browser())
  await page.goto((await served()).address)
  await page.getByText('Hand over to the next shift').click()
  const form = page.getByRole('form', { name: 'A note to the next shift' })
  expect(await form.getByRole('textbox').inputValue()).toContain('Still open: Mill 1: Add ')
  await form.getByRole('textbox').fill('Mill 1 smells')
  await form.getByRole('button', { name: 'Leave the note' }).click()
  await page.getByText('Last shift’s note: “Mill 1 smells”').waitFor()
  await page.getByRole('button', { name: 'I have read it' }).click()
  await page.getByText(/Read by /).waitFor()
})

test('more than the label allows is refused at the form, what it allows is written down', async () => {
  const page = await openPage(browser())
  const server = await served()
  await page.goto(`${server.address}/sumps/s1`)
  const dose = page.getByRole('article', { name: 'Biocide 3' })
  await dose.getByText(/mL to .*\smL of Biocide 3 into Mill 1, never more/).waitFor()
  await dose.getByRole('button', { name: 'It went in' }).click()
  const form = page.getByRole('form', { name: 'A dose of Biocide 3' })
  await form.getByLabel('How much went in, in mL').fill('900')
  await form.getByLabel('What for').fill('a slide of 10⁵')
  await form.getByRole('button', { name: 'Write it down' }).click()
  await form.getByText(/^Found 900\smL; by its label expected .*, never more\.$/).waitFor()
  await form.getByLabel('How much went in, in mL').fill('200')
  await form.getByRole('button', { name: 'Write it down' }).click()
  await dose.getByText('No Biocide 3 now.').waitFor()
  await dose.getByText(/again in 7 days/).waitFor()
})
