/** The way of a new user on a phone, from an empty book to the first recipe, and how long it takes by the keystroke-level model. */

import type { Locator, Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { expectRoomForAThumb, fileBrowser, lookAt, openPage, phone, servedBook } from './on-a-screen.ts'

const browser = fileBrowser()

/**
 * Card, Moran and Newell, The Psychology of Human–Computer Interaction, 1983 (from memory): a key of an average typist 0.28 s,
 * pointing 1.1 s, getting ready for what comes next 1.35 s. A key on a phone's glass is taken as 0.5 s.
 */
const seconds = { key: 0.5, tap: 1.1, decision: 1.35 }
const mostSeconds = 180

/** A hand that counts what it does; before each tap and each field it thinks once. */
function countingHand(page: Page) {
  const count = { taps: 0, keys: 0, decisions: 0, fields: 0 }
  return {
    count,
    sum: () => seconds.tap * count.taps + seconds.key * count.keys + seconds.decision * count.decisions,
    async tap(what: Locator) {
      count.taps += 1
      count.decisions += 1
      await what.tap()
    },
    /** A key that stands on the page: every one is pointed at. */
    async press(keys: string) {
      count.decisions += 1
      for (const key of keys) {
        count.taps += 1
        await page.getByRole('button', { name: key, exact: true }).tap()
      }
    },
    /** Into the field that has the focus. */
    async type(text: string) {
      count.fields += 1
      count.decisions += 1
      count.keys += text.length
      await page.keyboard.type(text)
    },
    /** Enter, on to the next field. */
    async enter() {
      count.keys += 1
      await page.keyboard.press('Enter')
    },
  }
}

const touch = { viewport: phone, hasTouch: true, isMobile: true }

test('in English, every field tapped by itself, the first recipe takes under three minutes', async () => {
  const served = await servedBook()
  const page = await openPage(browser(), served.address, touch)
  const hand = countingHand(page)
  await hand.tap(page.getByRole('link', { name: 'Begin with my shop' }))
  const form = page.getByRole('form', { name: 'Begin with my shop' })
  await form.waitFor()
  await expectRoomForAThumb(page)
  await lookAt(page, 'first-recipe-form', 'whole')
  const fill = async (name: string, text: string) => {
    const field = form.getByLabel(name, { exact: false })
    await hand.tap(field)
    await hand.type(text)
    expect(await field.inputValue()).toBe(text)
  }
  await fill('Name of the shop', 'Works of our own')
  await fill('Name of the fluid', 'Semi 1')
  await fill('Brix factor', '1.6')
  await fill('Band from', '6')
  await fill('Target', '8')
  await fill('Band to', '10')
  await fill('Name of the machine or sump', 'Mill 1')
  await fill('Full mark', '200')
  await hand.tap(form.getByRole('button', { name: 'Open the book and take the first reading' }))
  await page.getByRole('heading', { name: 'Mill 1', level: 1 }).waitFor()
  await hand.press('160')
  await hand.tap(page.getByRole('button', { name: 'On to look, smell, oil' }))
  for (const sense of ['Look', 'Smell', 'Oil']) {
    await hand.tap(page.getByRole('group', { name: sense }).locator('label').first())
  }
  await hand.press('3.5')
  // 3.5 °Brix × 1.6 = 5.6 % in 160 of 200 L hold 8.96 L; 16 L at 8 % in 200 L: 7.04 L in 40 L, 17.6 %.
  await page.getByText('Add 40 L at 17.6 %').waitFor()
  await lookAt(page, 'first-recipe-read')
  expect(hand.count).toMatchObject({ fields: 8, taps: 20, keys: 38 })
  expect(hand.sum()).toBeLessThan(mostSeconds)

  // Whoever has one sump has more: the next one is a tap away, its form open and in hand.
  await page.getByRole('button', { name: 'Poured as written · next' }).tap()
  await page.getByRole('link', { name: 'Add the next sump' }).tap()
  const next = page.getByRole('form', { name: 'Add a sump' })
  await next.waitFor()
  expect(await next.getByLabel('Fluid in it').inputValue()).toBe('semi-1')
  await page.keyboard.type('Mill 2')
  expect(await next.getByLabel('Name of the machine or sump').inputValue()).toBe('Mill 2')
  await lookAt(page, 'first-recipe-next-sump')
  expect(await next.getByLabel('Brim').isVisible()).toBe(false)
  await page.keyboard.press('Enter')
  await page.keyboard.type('300')
  expect(await next.getByLabel('Full mark').inputValue()).toBe('300')
  await next.getByText('Can wait').tap()
  expect(await next.getByLabel('Place on the round').inputValue()).toBe('2')
  await next.getByRole('button', { name: 'Write it down' }).tap()
  await next.waitFor({ state: 'detached' })
  await page.locator('.thing', { hasText: 'Mill 2' }).getByText('mark 300 L').waitFor()
})

test('in German, from field to field by Enter, with the target left to the middle of the band', async () => {
  const served = await servedBook()
  const page = await openPage(browser(), served.address, { ...touch, locale: 'de-DE' })
  const hand = countingHand(page)
  await hand.tap(page.getByRole('link', { name: 'Mit meinem Betrieb beginnen' }))
  const form = page.getByRole('form', { name: 'Mit meinem Betrieb beginnen' })
  await form.waitFor()
  await expectRoomForAThumb(page)
  await lookAt(page, 'first-recipe-form-de', 'whole')
  await hand.tap(form.getByLabel('Name des Betriebs'))
  await hand.type('Dreherei')
  await hand.enter()
  // Nothing for the target: 6 to 10 % have 8 % in the middle.
  for (const text of ['Semi 1', '1,6', '6', '', '10', 'Fräse 1', '200']) {
    if (text !== '') await hand.type(text)
    await hand.enter()
  }
  await page.getByRole('heading', { name: 'Fräse 1', level: 1 }).waitFor()
  await hand.press('160')
  await lookAt(page, 'first-recipe-level-de')
  await hand.tap(page.getByRole('button', { name: 'Weiter: Aussehen, Geruch, Öl' }))
  await lookAt(page, 'first-recipe-looks-de')
  for (const sense of [0, 1, 2]) await hand.tap(page.locator('.looks fieldset').nth(sense).locator('label').first())
  await hand.press('3,5')
  await page
    .getByText(/40\sL .*17,6\s%/)
    .first()
    .waitFor()
  await lookAt(page, 'first-recipe-read-de')
  expect(hand.count).toMatchObject({ fields: 7, taps: 12 })
  expect(hand.sum()).toBeLessThan(mostSeconds)
})

test('Enter sends nothing before its time, and names alone lead to where the factor is entered', async () => {
  const served = await servedBook()
  const page = await openPage(browser(), `${served.address}/begin/shop`, touch)
  const form = page.getByRole('form', { name: 'Begin with my shop' })
  await form.getByLabel('Name of the shop').tap()
  await page.keyboard.type('Works of our own')
  await page.keyboard.press('Enter')
  await page.keyboard.type('Semi 1')
  expect(await form.getByLabel('Name of the fluid').inputValue()).toBe('Semi 1')
  expect(await form.getByRole('alert').count()).toBe(0)

  const send = form.getByRole('button', { name: 'Open the book and take the first reading' })
  await send.tap()
  const sump = form.getByLabel('Name of the machine or sump')
  await expect.poll(() => sump.evaluate((field) => field === document.activeElement)).toBe(true)
  await page.keyboard.type('Mill 1')
  expect(await sump.inputValue()).toBe('Mill 1')
  // What is folded away opens where its fault is.
  await form.getByText('Can wait').tap()
  await form.getByLabel('It holds').fill('ten')
  await form.getByText('Can wait').tap()
  await send.tap()
  await form.getByLabel('It holds').waitFor()
  await lookAt(page, 'first-recipe-fault', 'whole')
  await form.getByLabel('It holds').fill('')
  await send.tap()

  await page.getByRole('heading', { name: 'Mill 1', level: 1 }).waitFor()
  await page.getByLabel('Refractometer, °Brix').fill('3.5')
  await lookAt(page, 'first-recipe-no-factor')
  await page.getByRole('link', { name: 'Enter the full mark' }).waitFor()
  await page.getByRole('link', { name: 'Enter the factor' }).tap()
  await page.getByRole('form', { name: 'Semi 1' }).getByLabel('Brix factor').fill('1.6')
})
