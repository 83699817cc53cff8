/** The app in other languages: chosen by hand on a phone, whole, and apart from figures and units. */
import { guidancePacks } from '@sumpbook/fluid'
import type { Page } from 'playwright-core'
import { beforeAll, expect, test } from 'vitest'
import { fileBrowser, fileExample, filePage, isWide, lookAt, openPage, screensOf } from './on-a-screen.ts'
import { isWhole, places } from './places.ts'

const browser = fileBrowser()
const served = fileExample()
const pageIn = { de: filePage(browser), es: filePage(browser) }

const allPlaces = [...places, '/nothing-here']

/** Small words of English that neither German nor Spanish has. */
const english = /\b(?:the|and|with|of|is|are|this|not|its|it|what|from|to)\b/i

/** What stays as it was recorded or printed: what the example shop wrote and calls its things, and titles as printed. */
let asWritten: string[]
beforeAll(async () => {
  const book: unknown = await (await fetch(`${served().address}/api/v1/export`)).json()
  const sources = stringsIn(guidancePacks, []).filter(({ key }) => ['document', 'title'].includes(key))
  const recorded = [...stringsIn(book, []), ...sources].map(({ text }) => text).filter((text) => english.test(text))
  asWritten = [...new Set(recorded)].toSorted((a, b) => b.length - a.length)
  expect(asWritten.length).toBeGreaterThan(10)
})

function stringsIn(value: unknown, found: { key: string; text: string }[], key = ''): { key: string; text: string }[] {
  if (typeof value === 'string') found.push({ key, text: value })
  else if (value !== null && typeof value === 'object')
    for (const [name, one] of Object.entries(value)) stringsIn(one, found, Array.isArray(value) ? key : name)
  return found
}

/** Texts that a reader sees or hears and that hold English. */
async function englishOn(page: Page): Promise<string[]> {
  const texts = await page.evaluate(() => {
    const said: string[] = []
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
    for (let node = walk.nextNode(); node !== null; node = walk.nextNode()) {
      const parent = node.parentElement!
      if (parent.closest('[lang="en"], datalist, script, style') === null && parent.checkVisibility())
        said.push(node.textContent!.replaceAll('\u00a0', ' ').trim())
    }
    for (const one of document.querySelectorAll('[aria-label], [title], [placeholder], [alt]'))
      for (const name of ['aria-label', 'title', 'placeholder', 'alt']) said.push(one.getAttribute(name) ?? '')
    return said
  })
  const own = (text: string) =>
    asWritten.reduce((rest, written) => rest.replaceAll(written.replaceAll('\u00a0', ' '), ''), text)
  return [...new Set(texts.filter((text) => english.test(own(text))))]
}

async function openIn(language: keyof typeof pageIn, place: string): Promise<Page> {
  const page = pageIn[language]()
  const { address } = served()
  if (page.url() === 'about:blank') {
    await page.goto(`${address}/livez`)
    await page.evaluate((chosen) => localStorage.setItem('sumpbook.reading', chosen), JSON.stringify({ language }))
  }
  await page.goto(address + place)
  await isWhole(page)
  return page
}

test.each(screensOf('tablet'))(
  'on a %s, a language, figures and units are chosen apart, at once and for good',
  async (name, viewport) => {
    const page = await openPage(browser(), `${served().address}/language`, { viewport })
    await page.getByRole('heading', { name: 'Language, figures, units' }).waitFor()
    const tap = (text: string) =>
      page
        .locator('label.tap')
        .filter({ hasText: new RegExp(`^${text}$`) })
        .click()
    await tap('Deutsch')
    await page.getByRole('heading', { name: 'Sprache, Zahlen, Einheiten' }).waitFor()
    expect(await page.evaluate(() => document.documentElement.lang)).toBe('de')
    const example = page.locator('.language-page p.quiet')
    expect(await example.textContent()).toMatch(/38\.5\u00a0L mit 7\.5\u00a0%/)
    await tap('1\\.234,5')
    await page.waitForFunction(() => /38,5\sL mit 7,5\s%/.test(document.body.textContent))
    await tap('US-Gallonen')
    await page.waitForFunction(() => /10,2\sgal mit 7,5\s%/.test(document.body.textContent))
    await tap('Español')
    await page.getByRole('heading', { name: 'Idioma, cifras, unidades' }).waitFor()
    // 38.5 / 3.785411784 = 10.17…
    expect(await example.textContent()).toMatch(/10,2\sgal al 7,5\s%/)
    await page.goto(served().address)
    await page.getByRole('heading', { name: 'Hoy' }).waitFor()
    await page.waitForLoadState('networkidle')
    const list = await page.locator('main').textContent()
    expect(list).toMatch(/\d\sgal\b/)
    expect(list).not.toMatch(/\d\sL\b/)
    expect(await isWide(page)).toBe(false)
    await lookAt(page, `spanish-today-${name}`)
    // The shop itself is set up as it was.
    await page.goto(`${served().address}/shop`)
    await page.waitForFunction(() => /· litros ·/.test(document.body.textContent))
  },
)

test('who cannot read English finds their language from the first page', async () => {
  const page = await openPage(browser(), served().address)
  await page.locator('button.more').click()
  await page.getByRole('link', { name: 'Deutsch · Español' }).click()
  await page.getByRole('heading', { name: 'Language, figures, units' }).waitFor()
})

for (const [language, which] of [
  ['de', allPlaces],
  ['es', allPlaces.filter((_, n) => n % 3 === 0)],
] as const) {
  test.each(which)(`%s holds no English in ${language}, and is as wide as the phone`, async (place) => {
    const page = await openIn(language, place)
    expect.soft(await englishOn(page)).toEqual([])
    expect.soft(await isWide(page)).toBe(false)
  })
}
