/** What every test in a browser begins with: a real Chromium, a served book, a page that fails its test when something in it goes wrong. */
import { fileURLToPath } from 'node:url'
import type { Browser, BrowserContextOptions, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, expect, onTestFinished } from 'vitest'
import { openChromium } from './chromium.ts'
import { type ServedBook, serveBook, serveExample } from './served-book.ts'

export const phone = { width: 360, height: 740 }
export const tablet = { width: 768, height: 1024 }
export const desk = { width: 1440, height: 900 }

const screens = { phone, tablet, desk }

/**
 * The screens that a flow is walked on which must hold on each: in every run those named, which are not the same for all flows, so that
 * all three occur; on all three where that is asked for (SCREENS=all). For `test.each`, the name first.
 */
export const screensOf = (...usual: (keyof typeof screens)[]) =>
  (Object.keys(screens) as (keyof typeof screens)[])
    .filter((name) => process.env.SCREENS === 'all' || usual.includes(name))
    .map((name) => [name, screens[name]] as const)

/** One Chromium for the tests of a file; the function gives it once they run. */
export function fileBrowser(...flags: string[]): () => Browser {
  let browser: Browser
  beforeAll(async () => {
    browser = await openChromium(...flags)
  })
  afterAll(() => browser.close())
  return () => browser
}

/** The example shop, served for the tests of a file. */
export function fileExample(): () => ServedBook {
  let served: ServedBook
  beforeAll(async () => {
    served = await serveExample()
  })
  afterAll(() => served.end())
  return () => served
}

/** An empty book, served for one test. */
export async function servedBook(...flags: string[]): Promise<ServedBook> {
  const served = await serveBook(...flags)
  onTestFinished(() => served.end())
  return served
}

/** The example shop with nothing asked of anybody, served for one test. */
export async function servedExample(): Promise<ServedBook> {
  const served = await serveExample()
  onTestFinished(() => served.end())
  return served
}

/** A book file, imported and served for one test. */
export async function servedFile(book: unknown): Promise<ServedBook> {
  const served = await servedBook()
  const form = new FormData()
  form.set('map', '{}')
  form.set('file', new File([JSON.stringify(book)], 'book.json'))
  const answer = await fetch(`${served.address}/api/v1/import`, { method: 'POST', body: form })
  expect(answer.status).toBe(200)
  return served
}

interface PageOptions extends BrowserContextOptions {
  /** Who has this device in hand. */
  initials?: string
  /** What the browser may complain of: the test brings it about itself. */
  forgive?: RegExp
  /** Whether the worker may come that keeps the app's files, all of which it fetches: where a test is about what it is for. */
  installs?: boolean
}

/** A page on a device of its own in a shop near Berlin; whatever else goes wrong in it fails the test. */
export async function openPage(browser: Browser, address = 'about:blank', options: PageOptions = {}): Promise<Page> {
  const { page, wrong } = await newDevice(browser, options)
  onTestFinished(async () => {
    await page.context().close()
    expect(wrong).toEqual([])
  })
  await page.goto(address)
  return page
}

/**
 * One page that goes from place to place through the tests of a file, so that it fetches and compiles the app once. What goes wrong in it
 * fails the test it goes wrong in.
 */
export function filePage(browser: () => Browser, options: PageOptions = {}): () => Page {
  let device: { page: Page; wrong: string[] }
  beforeAll(async () => {
    device = await newDevice(browser(), options)
  })
  afterEach(() => expect(device.wrong.splice(0)).toEqual([]))
  afterAll(() => device.page.context().close())
  return () => device.page
}

/** A page on a device of its own, and what went wrong in it so far. */
async function newDevice(browser: Browser, options: PageOptions): Promise<{ page: Page; wrong: string[] }> {
  const { initials, forgive, installs = false, ...device } = options
  const context = await browser.newContext({
    viewport: phone,
    locale: 'en-GB',
    timezoneId: 'Europe/Berlin',
    ...device,
  })
  if (initials !== undefined) {
    // A page that is nowhere yet has no storage.
    await context.addInitScript((by) => {
      if (location.protocol !== 'about:') localStorage.setItem('sumpbook.by', by)
    }, initials)
  }
  if (!installs) {
    // As on a network that is slow: it is asked for and has not come yet.
    await context.addInitScript(() => {
      if ('serviceWorker' in navigator) navigator.serviceWorker.register = () => new Promise(() => {})
    })
  }
  const page = await context.newPage()
  const wrong: string[] = []
  page.on('pageerror', (error) => wrong.push(error.message))
  page.on('console', (message) => {
    if (message.type() === 'error' && forgive?.test(message.text()) !== true) wrong.push(message.text())
  })
  return { page, wrong }
}

/** Whether the pictures of the docs are to be written anew (PICTURES=docs). */
export const picturesOfDocs = process.env.PICTURES === 'docs'

/** A picture for looking at, in `.cache/pictures`: only where pictures are asked for (PICTURES=all or docs), since each costs as much as a step. */
export async function lookAt(page: Page, name: string, part: 'window' | 'whole' = 'window'): Promise<void> {
  if (process.env.PICTURES === undefined) return
  await page.screenshot({ path: inRepository(`.cache/pictures/${name}.png`), fullPage: part === 'whole' })
}

/** A picture of the docs, which is only written anew when asked for. */
export async function showInDocs(page: Page, name: string, part: 'window' | 'whole' = 'window'): Promise<void> {
  if (!picturesOfDocs) return lookAt(page, name, part)
  await page.screenshot({ path: inRepository(`docs/pictures/${name}.png`), fullPage: part === 'whole' })
}

const inRepository = (path: string) => fileURLToPath(new URL(`../../../${path}`, import.meta.url))

export const isWide = (page: Page) => page.evaluate(() => document.documentElement.scrollWidth > innerWidth)

/** No page is wider than its window, and whatever can be touched is 44 px high and lies inside it. */
export async function expectRoomForAThumb(page: Page): Promise<void> {
  const found = await page.evaluate(() => {
    const touched = [
      ...document.querySelectorAll(
        'main :is(button, select, summary, input, .parts a, a.button, .tap), .places a, .places button',
      ),
    ]
    const small = touched
      // A box to tick is tapped by its label, a word in a sentence where it stands.
      .filter((element) => !element.matches('[type="checkbox"], [type="radio"], p button'))
      .map((element) => ({ element, box: element.getBoundingClientRect() }))
      .filter(({ box }) => box.height > 0 && (box.height < 43.5 || box.left < -0.5 || box.right > innerWidth + 0.5))
      .map(({ element, box }) => `${element.tagName} ${element.textContent} ${box.width} × ${box.height}`)
    return { small, isWide: document.documentElement.scrollWidth > innerWidth }
  })
  expect(found).toEqual({ small: [], isWide: false })
}
