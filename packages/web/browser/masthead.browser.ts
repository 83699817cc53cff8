/** The top of every page: whose book it is can be read on every screen, in every language. */
import { expect, test } from 'vitest'
import { desk, fileBrowser, fileExample, isWide, lookAt, openPage, phone, tablet } from './on-a-screen.ts'
import { isWhole } from './places.ts'

const browser = fileBrowser()
const served = fileExample()

const name = 'Zerspanung Musterdorf am langen Bach'

test.each(['en', 'de', 'es'])('a long name of a shop stands whole on every screen (%s)', async (language) => {
  const id = crypto.randomUUID()
  const entry = { id, kind: 'setup', about: { kind: 'shop', id: 'shop' }, at: new Date().toISOString() }
  const answer = await fetch(`${served().address}/api/v1/entries/${id}`, {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ ...entry, changes: { name } }),
  })
  expect(answer.status).toBe(201)
  const page = await openPage(browser(), `${served().address}/livez`)
  await page.evaluate((chosen) => localStorage.setItem('sumpbook.reading', chosen), JSON.stringify({ language }))
  await page.goto(served().address)
  for (const screen of [phone, tablet, desk]) {
    await page.setViewportSize(screen)
    await isWhole(page)
    const shop = page.locator('.masthead .shop')
    expect(await shop.textContent()).toBe(name)
    // Nothing of it is cut off by its box or covered by a neighbour.
    const cut = await shop.evaluate((element) => {
      const { left, top, right, bottom } = element.getBoundingClientRect()
      const corners = [left + 2, right - 2].flatMap((x) => [top + 2, bottom - 2].map((y) => [x, y] as const))
      return {
        byItsBox: element.scrollWidth > element.clientWidth || element.scrollHeight > element.clientHeight,
        byOthers: corners.some(([x, y]) => !element.contains(document.elementFromPoint(x, y))),
      }
    })
    expect(cut).toEqual({ byItsBox: false, byOthers: false })
    expect(await isWide(page)).toBe(false)
    await lookAt(page, `masthead-${language}-${screen.width}`)
  }
  // On a desk the places are one line beside it.
  const lines = await page
    .locator('.places a:visible')
    .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().top))
  expect(new Set(lines).size).toBe(1)
})
