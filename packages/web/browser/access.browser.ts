/**
 * Every place of the app by the rules of WCAG 2.2 A and AA as axe checks them, and by those of our own: text at 7 : 1, what is tapped 44 px
 * high, nothing wider than the screen, everything reached by keyboard.
 */
import { AxeBuilder } from '@axe-core/playwright'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openChromium } from './chromium.ts'
import { type ServedBook, serveBook } from './served-book.ts'

const places = [
  '/',
  '/round',
  '/round/tc1',
  '/sumps',
  '/sumps/mill7',
  '/sumps/mill7/why',
  '/mixing',
  '/mixing/batch',
  '/mixing/cart',
  '/mixing/mixer',
  '/mixing/factor',
  '/water',
  '/water/blend',
  '/water/ahead',
  '/water/treatment',
  '/cleanouts',
  '/cleanouts/plan',
  '/cleanouts/upkeep',
  '/cleanouts/together',
  '/cleanouts/shutdown',
  '/stock',
  '/stock/waste',
  '/stock/cost',
  '/stock/month',
  '/tests',
  '/tests/samples',
  '/tests/found',
  '/journal',
  '/journal/held',
  '/shop',
  '/shop/guidance',
  '/shop/people',
  '/shop/account',
  '/shop/labels',
  '/shop/additives',
  '/round-sheet',
  '/shop/sheet',
] as const

let browser: Browser
let served: ServedBook
let base: string
beforeAll(async () => {
  ;[browser, served] = await Promise.all([openChromium(), serveBook()])
  base = served.address.replace(/\/$/, '')
  const answer = await fetch(`${base}/api/v1/demo`, { method: 'POST', headers: { origin: base } })
  expect(answer.status).toBe(201)
})
afterAll(async () => {
  await browser.close()
  await served.end()
})

/** How it is looked at: on a phone by day, on a desk by night. */
const looks = [
  { name: 'a phone by day', viewport: { width: 360, height: 740 }, colorScheme: 'light' },
  { name: 'a desk by night', viewport: { width: 1440, height: 900 }, colorScheme: 'dark' },
] as const

async function openPlace(place: string, { viewport, colorScheme }: (typeof looks)[number]): Promise<Page> {
  const context = await browser.newContext({ viewport, colorScheme, reducedMotion: 'reduce' })
  const page = await context.newPage()
  await page.goto(`${base}${place}`, { waitUntil: 'load' })
  await page.locator('h1:visible, h2:visible').first().waitFor()
  await page.waitForFunction(
    () => !/One moment …|Fetching|Working out|Opening the book/.test(document.body.textContent),
  )
  return page
}

/** Each fault with the first places it is found at, short enough to read. */
async function faultsOf(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
    .options({ rules: { 'color-contrast-enhanced': { enabled: true } } })
    .analyze()
  return violations.flatMap(({ id, nodes }) =>
    nodes
      .slice(0, 3)
      .map(
        ({ target, html, any }) =>
          `${id}: ${target.join(' ')} ${html.slice(0, 110)} ${any[0]?.message.slice(0, 120) ?? ''}`,
      ),
  )
}

/** What is tapped and is less than 44 px high, links inside sentences aside (WCAG 2.5.5 and 2.5.8 leave those out). */
const smallTargets = (page: Page) =>
  page.evaluate(() => {
    const tapped = document.querySelectorAll(
      'main button, main input, main select, main summary, main a.button, nav a, nav button',
    )
    return [...tapped]
      .filter((one) => one.checkVisibility({ visibilityProperty: true }))
      .map((one) => {
        // A box to tick is tapped by its label.
        const target = one.matches('input[type=checkbox], input[type=radio]') ? (one.closest('label') ?? one) : one
        return { what: one.outerHTML.slice(0, 90), high: target.getBoundingClientRect().height }
      })
      .filter(({ high }) => high > 0 && high < 43.5)
      .map(({ what, high }) => `${high.toFixed(0)} px: ${what}`)
  })

/** Where colours of its own may go wrong by night: drawings, gauges, marks. */
const drawn: readonly (typeof places)[number][] = [
  '/',
  '/round/tc1',
  '/sumps/mill7',
  '/water/ahead',
  '/mixing',
  '/stock',
  '/cleanouts',
  '/journal',
  '/shop',
]

for (const look of looks) {
  test.each(look.colorScheme === 'light' ? places : drawn)(
    `%s on ${look.name} has no fault of access`,
    async (place) => {
      const page = await openPlace(place, look)
      try {
        expect.soft(await faultsOf(page)).toEqual([])
        expect.soft(await smallTargets(page)).toEqual([])
        expect
          .soft(await page.evaluate(() => document.documentElement.scrollWidth))
          .toBeLessThanOrEqual(look.viewport.width)
      } finally {
        await page.context().close()
      }
    },
  )
}
