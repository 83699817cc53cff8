/**
 * How the app feels in a real Chromium on this machine, nothing slowed down: `node bench/web/feel.ts`. The first picture on a visit again, a key pressed at a stop
 * of the round, five years of a sump drawn, Today of 500 sumps. Each from what a person does to the frame that shows it.
 */
import type { Browser, Page } from 'playwright-core'
import { openChromium } from '../../packages/web/browser/chromium.ts'
import { type ServedBook, serveBook } from '../../packages/web/browser/served-book.ts'
import { simulateShop } from '../estimate/simulate/shop.ts'
import { digits, median } from '../machine.ts'
import { keepFigures } from '../record/keep-figures.ts'
import { fiveYears } from './five-years.ts'

const limits = { repeatLcpMs: 1000, keyMs: 50, fiveYearsDrawnMs: 100, todayOf500Ms: 1000 }
const phone = { width: 360, height: 740 }
const times = 15

const browser = await openChromium()
const figures = {
  ...(await onExample(browser)),
  fiveYearsDrawn: await onFiveYears(browser),
  todayOf500: await onFiveHundred(browser),
}
await browser.close()
const middles = {
  repeatLcpMs: figures.repeatLcp.median,
  keyMs: figures.key.median,
  fiveYearsDrawnMs: figures.fiveYearsDrawn.median,
  todayOf500Ms: figures.todayOf500.median,
}
const good = Object.entries(limits).every(([name, limit]) => middles[name as keyof typeof limits] <= limit)
keepFigures('how the app feels, ms from what a person does to the frame that shows it', { limits, ...figures }, good)

/** The example shop: opened again and again, then keys at a stop. */
async function onExample(browser: Browser) {
  return withBook(browser, null, async (page, { address }) => {
    await page.goto(address)
    await page.getByRole('heading', { name: 'Today', level: 1 }).waitFor()
    await page.waitForFunction(async () => (await navigator.serviceWorker.ready) && navigator.serviceWorker.controller)
    // The page that the worker came with may still be loading what it will keep.
    await page.waitForLoadState('networkidle')
    const lcp: number[] = []
    for (let i = 0; i < times; i++) {
      await page.goto(address)
      // What is larger than all before it may come late: the worker has answered and the book too by then.
      await page.waitForTimeout(1_500)
      lcp.push(
        await page.evaluate(
          () =>
            new Promise<number>((resolve) => {
              new PerformanceObserver((seen) => resolve(seen.getEntries().at(-1)!.startTime)).observe({
                type: 'largest-contentful-paint',
                buffered: true,
              })
            }),
        ),
      )
    }
    await page.goto(`${address}/round`)
    await page.locator('.stops a').first().click()
    const field = page.getByLabel('Level, litres')
    await field.waitFor()
    const keys: number[] = []
    for (let i = 0; i < times; i++) {
      for (const key of ['1', '2', '3']) {
        await page.evaluate(watch, 'keydown')
        await page.keyboard.press(key)
        keys.push(await page.evaluate(shown))
      }
      await field.fill('')
    }
    return { repeatLcp: spread(lcp), key: spread(keys) }
  })
}

/** A sump with an entry or two on each working day of five years: from the tap on "all" to the drawing. */
async function onFiveYears(browser: Browser) {
  const book = fiveYears(new Date())
  return withBook(browser, book, async (page, { address }) => {
    await page.goto(`${address}/sumps/s1`)
    const period = (name: string) => page.getByRole('button', { name, exact: true })
    await period('all').waitFor({ timeout: 120_000 })
    const drawn: number[] = []
    for (let i = 0; i < times; i++) {
      await period('13 weeks').click()
      await page.evaluate(watch, 'click')
      await period('all').click()
      drawn.push(await page.evaluate(shown))
    }
    return { entries: book.entries.length, ...spread(drawn) }
  })
}

/** Today of a shop of 500 sumps whose book has been read before: from the tap in the menu until the book's own answer stands there. */
async function onFiveHundred(browser: Browser) {
  const { book } = simulateShop({ seed: 1, shop: 1, sumps: 500 })
  endNow(book.entries)
  return withBook(browser, book, async (page, { address }) => {
    // The first time the book is read whole.
    await fetch(`${address}/api/v1/today`)
    const here: number[] = []
    for (let i = 0; i < times; i++) {
      await page.goto(`${address}/language`)
      await page.getByRole('heading', { level: 1 }).waitFor()
      // What a device fetches ahead of a round, a page of a sump after the other, is not what is measured here.
      await page.waitForLoadState('networkidle')
      const answered = page.waitForResponse((answer) => new URL(answer.url()).pathname === '/api/v1/today')
      await page.evaluate(watch, 'click')
      await page.getByRole('link', { name: 'Today', exact: true }).click()
      await (await answered).finished()
      here.push(await page.evaluate(shownAfterAll))
    }
    return { entries: book.entries.length, ...spread(here) }
  })
}

async function withBook<T>(
  browser: Browser,
  book: unknown,
  measure: (page: Page, served: ServedBook) => Promise<T>,
): Promise<T> {
  const served = await serveBook()
  const address = served.address.replace(/\/$/, '')
  try {
    await fill(address, book)
    const context = await browser.newContext({ viewport: phone, locale: 'en-GB', timezoneId: 'Europe/Berlin' })
    const page = await context.newPage()
    const measured = await measure(page, { ...served, address })
    await context.close()
    return measured
  } finally {
    await served.end()
  }
}

/** @param book null: the example shop */
async function fill(address: string, book: unknown): Promise<void> {
  const form = new FormData()
  form.set('map', '{}')
  form.set('file', new File([JSON.stringify(book)], 'book.json'))
  const answer = await (book === null
    ? fetch(`${address}/api/v1/demo`, { method: 'POST', headers: { origin: address } })
    : fetch(`${address}/api/v1/import`, { method: 'POST', body: form }))
  if (!answer.ok) throw new Error(`the book could not be made: ${answer.status} ${await answer.text()}`)
}

interface Watched {
  began: number
  /** Of the frame after the event. */
  shownAt: Promise<number>
}

/** The same weeks later, so that the last round was walked this week. */
function endNow(entries: { at?: unknown }[]): void {
  const week = 7 * 86_400_000
  const late = Math.floor((Date.now() - Date.parse(String(entries.at(-1)!.at))) / week) * week
  for (const entry of entries) entry.at = new Date(Date.parse(String(entry.at)) + late).toISOString()
}

/** In the page: waits for the next event of a kind. */
function watch(kind: string): void {
  const seen: Partial<Watched> = {}
  Object.assign(window, { seen })
  addEventListener(
    kind,
    ({ timeStamp }) => {
      seen.began = timeStamp
      seen.shownAt = new Promise((resolve) => requestAnimationFrame(() => setTimeout(() => resolve(performance.now()))))
    },
    { capture: true, once: true },
  )
}

/** In the page: milliseconds from the event to the end of the frame that follows it. */
async function shown(): Promise<number> {
  const { began, shownAt } = (window as unknown as { seen: Watched }).seen
  return (await shownAt) - began
}

/** In the page: milliseconds from the event to the end of a frame that is drawn from now on. */
async function shownAfterAll(): Promise<number> {
  const { began } = (window as unknown as { seen: Watched }).seen
  await new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)))
  return performance.now() - began
}

function spread(all: readonly number[]) {
  return { times: all.length, median: digits(median(all)), most: digits(Math.max(...all)) }
}
