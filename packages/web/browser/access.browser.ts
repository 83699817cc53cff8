/**
 * Every place of the app by the rules of WCAG 2.2 A and AA as axe checks them, and by those of our own: text at 7 : 1 by day, by night and with more
 * contrast, what is tapped 44 px high, nothing wider than the screen, everything reached by keyboard and seen there.
 */

import { fileURLToPath } from 'node:url'
import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { expect, onTestFinished, test } from 'vitest'
import { desk, fileBrowser, fileExample, filePage, phone, picturesOfDocs, tablet } from './on-a-screen.ts'
import { isWhole, places } from './places.ts'

const browser = fileBrowser()
const served = fileExample()
const onePage = filePage(browser, { reducedMotion: 'reduce' })

async function openPlace(place: string): Promise<Page> {
  const page = onePage()
  await page.goto(served().address + place)
  await isWhole(page)
  return page
}

/** What is found is told, not what was passed; no place has frames, for which alone the newer way opens a page more each time. */
const asked = { resultTypes: ['violations' as const] }

/** Each fault with the first places it is found at, short enough to read. */
async function faultsOf(page: Page, rules: 'all' | 'of colour' = 'all'): Promise<string[]> {
  const axe = new AxeBuilder({ page }).setLegacyMode()
  if (rules === 'of colour') axe.options(asked).withRules(['color-contrast', 'color-contrast-enhanced'])
  else
    axe
      .options({ ...asked, rules: { 'color-contrast-enhanced': { enabled: true } } })
      .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
  const { violations } = await axe.analyze()
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

/** What can be used and the Tab key does not come to, or comes to without showing it. Of radio buttons of one name it comes to one. */
async function unreached(page: Page): Promise<string[]> {
  const count = await page.evaluate(() => {
    const usable = 'a[href], button, input, select, textarea, summary, [tabindex="0"]'
    const all = [...document.querySelectorAll<HTMLElement>(usable)].filter(
      (one) =>
        // Keys drawn for thumbs are on a keyboard already.
        !one.matches(':disabled, [type=hidden], [tabindex="-1"]') && one.checkVisibility({ visibilityProperty: true }),
    )
    const reached = new Set<Element>()
    const unseen = new Set<Element>()
    Object.assign(window, { walked: { all, reached, unseen } })
    addEventListener('focusin', ({ target }) => {
      const one = target as HTMLElement
      reached.add(one)
      // A field that is covered by its label shows its focus there.
      const shown = [one, one.closest('label'), one.nextElementSibling, one.parentElement].some((near) => {
        if (near === null) return false
        const { outlineStyle, boxShadow } = getComputedStyle(near as Element)
        return outlineStyle !== 'none' || boxShadow !== 'none'
      })
      if (!shown) unseen.add(one)
    })
    document.body.focus()
    return all.length
  })
  // Sent one after the other, without waiting for each: they arrive in this order.
  await Promise.all(Array.from({ length: count + 3 }, () => page.keyboard.press('Tab')))
  return page.evaluate(() => {
    const { all, reached, unseen } = (
      window as unknown as { walked: { all: HTMLElement[]; reached: Set<Element>; unseen: Set<Element> } }
    ).walked
    const names = new Set([...reached].map((one) => (one as HTMLInputElement).name).filter(Boolean))
    const word = (one: Element) => one.outerHTML.slice(0, 90)
    return [
      ...all
        .filter((one) => one.isConnected && !reached.has(one))
        .filter((one) => !(one.matches('[type=radio]') && names.has((one as HTMLInputElement).name)))
        .map((one) => `not reached: ${word(one)}`),
      ...[...unseen].map((one) => `not seen: ${word(one)}`),
    ]
  })
}

test.each(places)(
  '%s has no fault of access on a phone, is no wider than any screen, and is reached by keys',
  async (place) => {
    const page = await openPlace(place)
    if (picturesOfDocs) await page.screenshot({ path: placePicture(place), type: 'jpeg', quality: 60, fullPage: true })
    expect.soft(await faultsOf(page)).toEqual([])
    expect.soft(await smallTargets(page)).toEqual([])
    expect.soft(await unreached(page)).toEqual([])
    for (const viewport of [desk, tablet, phone]) {
      await page.setViewportSize(viewport)
      expect.soft(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(viewport.width)
    }
  },
)

const placePicture = (place: string) =>
  fileURLToPath(
    new URL(
      `../../../docs/pictures/places/${place === '/' ? 'today' : place.slice(1).replaceAll('/', '-')}.jpg`,
      import.meta.url,
    ),
  )

/** Where colours of its own may go wrong: drawings, gauges, marks. */
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

test.each(drawn)('%s is read by night and with more contrast', async (place) => {
  const page = await openPlace(place)
  onTestFinished(() => page.emulateMedia({ colorScheme: null, contrast: null }))
  for (const [colorScheme, contrast] of [
    ['dark', 'no-preference'],
    ['light', 'more'],
    ['dark', 'more'],
  ] as const) {
    await page.emulateMedia({ colorScheme, contrast })
    expect.soft(await faultsOf(page, 'of colour')).toEqual([])
  }
})

test('drawings take the colours that a person chose for every page', async () => {
  const page = await openPlace('/sumps/mill7')
  await page.emulateMedia({ forcedColors: 'active' })
  const { ink, wall, filled, paper } = await page.evaluate(() => {
    const probe = document.body.appendChild(document.createElement('i'))
    probe.style.cssText = 'color: CanvasText; background: Canvas; forced-color-adjust: none'
    const styleOf = (place: string) => getComputedStyle(document.querySelector(`.gauge ${place}`)!)
    const { color, backgroundColor } = getComputedStyle(probe)
    return { ink: color, paper: backgroundColor, wall: styleOf('.wall').stroke, filled: styleOf('.filled').fill }
  })
  expect(wall).toBe(ink)
  expect([ink, paper]).not.toContain(filled)
})
