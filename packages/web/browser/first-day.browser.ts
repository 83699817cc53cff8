/** The first day of a new user, in a real browser on a real server. */
import { fileURLToPath } from 'node:url'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest'
import { openChromium } from './chromium.ts'
import { type ServedBook, serveBook } from './served-book.ts'

const phone = { width: 360, height: 740 }
const desk = { width: 1200, height: 900 }
const picture = (name: string) => fileURLToPath(new URL(`../../../docs/pictures/${name}.png`, import.meta.url))

let browser: Browser
beforeAll(async () => {
  browser = await openChromium()
})
afterAll(() => browser.close())

/** A page of its own; what goes wrong in it fails the test. */
async function openPage(viewport: { width: number; height: number }): Promise<{ page: Page; context: BrowserContext }> {
  const context = await browser.newContext({ viewport, locale: 'en-GB', timezoneId: 'Europe/Berlin' })
  const page = await context.newPage()
  const wrong: string[] = []
  page.on('pageerror', (error) => wrong.push(error.message))
  page.on('console', (message) => {
    if (message.type() === 'error') wrong.push(message.text())
  })
  onTestFinished(async () => {
    await context.close()
    expect(wrong).toEqual([])
  })
  return { page, context }
}

async function freshBook(): Promise<ServedBook> {
  const served = await serveBook()
  onTestFinished(() => served.end())
  return served
}

const isWide = (page: Page) => page.evaluate(() => document.documentElement.scrollWidth > window.innerWidth)

test('the example shop opens, a round takes a reading, Today changes, and it is all there after a restart', async () => {
  const served = await freshBook()
  const { page } = await openPage(desk)
  await page.goto(served.address)
  await page.getByRole('button', { name: 'Look round the example shop' }).click()
  await page.getByRole('heading', { name: 'Today', level: 1 }).waitFor()
  const listed = await page.getByRole('heading', { name: 'Turning centre 2' }).count()
  expect(listed).toBe(1)
  await page.screenshot({ path: picture('today') })

  const { page: round } = await openPage(phone)
  await round.goto(`${served.address}/round`)
  await round.getByRole('link', { name: /Turning centre 2/ }).click()
  await round.getByRole('heading', { name: 'Turning centre 2' }).waitFor()
  for (const key of ['1', '3', '0']) await round.getByRole('button', { name: key, exact: true }).click()
  await round.getByRole('button', { name: 'On to look, smell, oil' }).click()
  for (const sense of ['Look', 'Smell', 'Oil']) {
    await round.getByRole('group', { name: sense }).locator('label').first().click()
  }
  for (const key of ['4', '.', '1']) await round.getByRole('button', { name: key, exact: true }).click()
  // 4.1 °Brix at a factor of 1 are 4.1 % in 130 of 180 L; 50 L at the mixer's 15 % bring 12.83 L into 180: 7.1 %.
  await round.getByText('Add 50 L at 15 %').waitFor()
  await round
    .getByText(/7\.1 %/)
    .first()
    .waitFor()
  expect(await isWide(round)).toBe(false)
  await round.screenshot({ path: picture('round') })
  await round.getByRole('button', { name: 'Poured as written · next' }).click()
  await round.getByRole('heading', { name: 'Sliding-head lathe 3' }).waitFor()
  await round.getByText('all saved').last().waitFor()

  await page.reload()
  const inOrder = page.getByRole('region', { name: 'In order' })
  await inOrder.getByText('Turning centre 2').waitFor()

  await served.restart()
  await page.reload()
  await page.getByRole('region', { name: 'In order' }).getByText('Turning centre 2').waitFor()
  await page.goto(`${served.address}/sumps/tc2`)
  // In 12 L buckets and a jug: 42 L of water and 7.5 L of concentrate, 49.5 L at 15.2 %.
  await page.getByText('Added 49.5 L at 15.2 %').first().waitFor()
  await page.screenshot({ path: picture('sump'), fullPage: true })
})
