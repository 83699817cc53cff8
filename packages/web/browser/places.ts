import type { Page } from 'playwright-core'

/** Every place of the app, as the example shop fills it. */
export const places = [
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
  '/language',
] as const

/** Waits until a place shows all it has: whatever is on its way is said with three dots at its end. */
export async function isWhole(page: Page): Promise<void> {
  await page.locator('h1:visible, h2:visible').first().waitFor()
  await page.waitForFunction(() =>
    [...document.querySelectorAll('main p, main span')].every(
      (one) => !one.checkVisibility() || !/^[^.]{3,40} …$/.test(one.textContent),
    ),
  )
}
