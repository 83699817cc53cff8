/** What a month cost, the shop's own figures, and the month on paper, in a real browser on a real server. */
import { fileURLToPath } from 'node:url'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest'
import { openChromium } from './chromium.ts'
import { type ServedBook, serveBook } from './served-book.ts'

const phone = { width: 360, height: 740 }
const desk = { width: 1200, height: 900 }
const picture = (name: string) => fileURLToPath(new URL(`../../../.cache/pictures/${name}.png`, import.meta.url))

let browser: Browser
let served: ServedBook
beforeAll(async () => {
  browser = await openChromium()
  served = await serveBook()
  const made = await fetch(`${served.address}/api/v1/demo`, { method: 'POST', headers: { origin: served.address } })
  expect(made.status).toBe(201)
})
afterAll(async () => {
  await browser.close()
  await served.end()
})

async function openPage(viewport: { width: number; height: number }, path: string): Promise<Page> {
  const context = await browser.newContext({ viewport, locale: 'en-GB', timezoneId: 'Europe/Berlin' })
  const page = await context.newPage()
  const wrong: string[] = []
  page.on('pageerror', (error) => wrong.push(error.message))
  onTestFinished(async () => {
    await context.close()
    expect(wrong).toEqual([])
  })
  await page.goto(served.address + path)
  return page
}

const isWide = (page: Page) => page.evaluate(() => document.documentElement.scrollWidth > window.innerWidth)

test('a month says first what it cost; a figure of the shop’s own counts at once, and only from its day on', async () => {
  const page = await openPage(phone, '/stock/cost')
  const lede = page.locator('p.lede')
  await lede.getByText(/ cost €[\d,]+: .* concentrate/).waitFor()
  await page.getByRole('heading', { name: 'A steadier hand' }).waitFor()
  expect(await isWide(page)).toBe(false)
  await page.screenshot({ path: picture('cost-phone'), fullPage: true })
  const before = await lede.textContent()

  // Twice the wage, from today on: what was before keeps its own.
  const wage = page.getByLabel('Work, EUR an hour')
  expect(await wage.inputValue()).toBe('42')
  await wage.fill('84')
  await page.getByRole('button', { name: 'Keep these figures' }).click()
  await page.getByText('Written down.').waitFor()
  expect(await lede.textContent()).toBe(before)

  // A first figure without a day counts for what was before as well.
  await page.getByLabel('A day under the band, EUR').fill('7')
  await page.getByRole('button', { name: 'Keep these figures' }).click()
  await page.getByText('Written down.').waitFor()
  const cost = await (await fetch(`${served.address}/api/v1/cost?from=2026-01-01&to=2026-01-31`)).json()
  expect(cost.assumptions).toContainEqual({ figure: 'leanPerDay', value: 7 })
  expect(cost.assumptions).toContainEqual({ figure: 'labourPerHour', value: 42 })
})

test('a figure that is none is refused at its field, and nothing is kept', async () => {
  const page = await openPage(desk, '/stock/cost')
  const wage = page.getByLabel('A machine that stands, EUR an hour')
  await wage.fill('-5')
  await page.getByText(/at least 0/).waitFor()
  await page.getByRole('button', { name: 'Keep these figures' }).click()
  expect(await page.getByText('Written down.').count()).toBe(0)
})

test('the month is printed on few pages, with the chain’s head at its foot and nothing to press on it', async () => {
  const page = await openPage(desk, '/stock/month')
  await page.getByRole('heading', { name: 'Cost by part' }).waitFor()
  await page.getByText(/~\d/).first().waitFor()
  const { hash } = (await (await fetch(`${served.address}/api/v1/book`)).json()).head
  expect(await page.locator('.month-report footer code').textContent()).toBe(hash)
  for (const format of ['A4', 'Letter']) {
    const pdf = (await page.pdf({ format })).toString('latin1')
    const pages = Number(/\/Count (\d+)/.exec(pdf)?.[1])
    expect(pages).toBeGreaterThan(0)
    expect(pages).toBeLessThanOrEqual(3)
  }
  await page.emulateMedia({ media: 'print' })
  for (const tool of ['Earlier', 'Print'])
    expect(await page.getByRole('button', { name: tool }).isVisible()).toBe(false)
  expect(await page.getByRole('navigation').filter({ visible: true }).count()).toBe(0)
  await page.setViewportSize({ width: 704, height: 1000 })
  expect(await isWide(page)).toBe(false)
  await page.screenshot({ path: picture('month-print'), fullPage: true })
})
