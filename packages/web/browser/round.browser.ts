/** A whole stop of the round on a phone's width: tests that are due, a photo, a pour that only one of two phones makes, and what the walk came to. */
import { readFileSync } from 'node:fs'
import type { Page } from 'playwright-core'
import { expect, test, vi } from 'vitest'
import { expectRoomForAThumb, fileBrowser, lookAt, openPage, type phone, screensOf, servedFile } from './on-a-screen.ts'
import { isInstalled } from './phone-to-kill.ts'

vi.setConfig({ testTimeout: 90_000 })

const anyPicture = readFileSync(new URL('../public/icon-192.png', import.meta.url))

const browser = fileBrowser()

const shopFile = {
  format: 'sumpbook-book/1',
  shop: {
    name: 'Invented works',
    timeZone: 'Europe/Berlin',
    units: 'metric',
    guidance: { pack: 'germany', edition: '2007' },
  },
  fluids: [
    {
      id: 'f1',
      name: 'Semi 1',
      class: 'semi-synthetic',
      brixFactor: 1.6,
      limits: { concentration: { low: 6, target: 8, high: 10 } },
    },
  ],
  waters: [{ id: 'di', name: 'Deionised water', kind: 'deionised' }],
  instruments: [
    { id: 'ns', name: 'Nitrite strips', kind: 'strip', pads: [0, 5, 10, 25, 50, 80] },
    { id: 'ps', name: 'pH strips', kind: 'strip', pads: [7, 8, 9, 10] },
  ],
  sumps: [
    { id: 's1', name: 'Mill 1', place: 'bay C', fluid: 'f1', fillVolume: 200, capacity: 240 },
    { id: 's2', name: 'Mill 2', place: 'bay C', fluid: 'f1', fillVolume: 200, capacity: 240 },
  ],
}

const bookServed = () => servedFile(shopFile)

/** Some tests take the network away. */
const phoneOf = (initials: string, options: { installs?: boolean; viewport?: typeof phone } = {}) =>
  openPage(browser(), undefined, { initials, forgive: /ERR_INTERNET_DISCONNECTED/, ...options })

/** By the page's keys, or where it has none, as at a desk, by the keyboard's into the field that the page stands in. */
const press = async (page: Page, text: string) => {
  const keys = page.getByRole('group', { name: 'Keys' })
  if (!(await keys.isVisible())) return page.keyboard.type(text)
  for (const key of text) await keys.getByRole('button', { name: key, exact: true }).click()
}
const rubOut = async (page: Page) => {
  const key = page.getByRole('button', { name: 'Rub out' })
  await ((await key.isVisible()) ? key.click() : page.keyboard.press('Backspace'))
}

/** 160 of 200 L, all looks fine. */
async function readLevelAndLook(page: Page) {
  await press(page, '160')
  await page.getByRole('button', { name: 'On to look, smell, oil' }).click()
  for (const sense of ['Look', 'Smell', 'Oil']) {
    await page.getByRole('group', { name: sense }).locator('label').first().click()
  }
}

interface BookEntry {
  kind: string
  sump: string | null
  [field: string]: unknown
}
async function entriesOf(address: string): Promise<BookEntry[]> {
  const { entries } = (await (await fetch(`${address}/api/v1/entries?limit=200`)).json()) as {
    entries: { id: string }[]
  }
  return Promise.all(
    entries.map(async ({ id }) => {
      const page = (await (await fetch(`${address}/api/v1/entries/${id}`)).json()) as { entry: BookEntry }
      return page.entry
    }),
  )
}

test.each(screensOf('phone'))(
  'on a %s, a stop with tests that are due, a photo and a pour that a second one leaves alone; then what the walk came to',
  async (name, viewport) => {
    const served = await bookServed()
    const one = await phoneOf('RK', { viewport })
    const two = await phoneOf('MS', { viewport })
    await one.goto(`${served.address}/round`)
    await one.getByRole('region', { name: 'Before you walk' }).waitFor()
    await expectRoomForAThumb(one)
    await one.getByRole('link', { name: 'Begin with Mill 1' }).click()
    await one.getByText('due: pH, Nitrite').waitFor()
    await readLevelAndLook(one)

    // The tests come of themselves, since they are due: a pad between two others, a figure from the keys.
    const nitrite = one.getByRole('group', { name: /^Nitrite: pads/ })
    await nitrite.getByRole('button', { name: '10', exact: true }).click()
    await nitrite.getByRole('button', { name: '25', exact: true }).click()
    expect(await one.getByLabel('Nitrite, mg/L').inputValue()).toBe('10-25')
    await one.getByLabel('pH', { exact: true }).click()
    await press(one, '4.2')
    await one.getByText(/pH 4.2 is far from what a coolant shows/).waitFor()
    for (let n = 0; n < 3; n++) await rubOut(one)
    await press(one, '9.2')
    // No day is set for a slide by this guidance: it is one tap away.
    expect(await one.getByRole('button', { name: 'Slide dipped' }).count()).toBe(0)
    await one.getByRole('button', { name: 'Other tests' }).click()
    await one.getByRole('button', { name: 'Slide dipped' }).click()
    await expectRoomForAThumb(one)
    await lookAt(one, `round-due-tests-${name}`)
    await one.getByRole('button', { name: 'On to the refractometer' }).click()
    await press(one, '3.5')
    // 3.5 °Brix × 1.6 = 5.6 % in 160 of 200 L hold 8.96 L; 7.04 L more in 40 L are 17.6 %.
    await one.getByText('Add 40 L at 17.6 %').waitFor()
    // What to pour and how stands above the keys without a scroll, under the name of the sump.
    const edges = () =>
      one.evaluate(() => {
        const edge = (what: string) => document.querySelector(what)!.getBoundingClientRect()
        return {
          how: edge('.say .how').bottom,
          foot: edge('.stop-foot').top,
          name: edge('#stop-name').bottom,
          row: edge('.row.here').top,
        }
      })
    await expect.poll(async () => (await edges()).how - (await edges()).foot).toBeLessThan(0)
    expect((await edges()).row).toBeGreaterThanOrEqual((await edges()).name)
    await one.getByLabel('A photo of what was found').setInputFiles({
      name: 'sump.png',
      mimeType: 'image/png',
      buffer: anyPicture,
    })
    await one.getByRole('button', { name: 'Leave the photo out' }).waitFor()
    await one.getByRole('button', { name: 'I am on it' }).click()
    await one.getByText(/You are on it until/).waitFor()
    await one.getByRole('button', { name: 'all saved' }).waitFor()
    await expectRoomForAThumb(one)
    await one.locator('.stop-body').evaluate((body) => body.scrollTo(0, body.scrollHeight))
    await lookAt(one, `round-claimed-${name}`)

    await two.goto(`${served.address}/round/s1`)
    await two.getByText('due: pH, Nitrite').waitFor()
    await press(two, '160')
    await two.getByLabel('Refractometer, °Brix').click()
    await press(two, '3.5')
    await two.getByText(/^RK is on it since/).waitFor()
    await two.getByRole('button', { name: 'Poured as written · next' }).click()
    await two.getByText('RK said first that they pour here.', { exact: false }).waitFor()
    await lookAt(two, `round-others-claim-${name}`)
    await two.getByRole('button', { name: 'Back' }).click()

    await one.getByRole('button', { name: 'Poured as written · next' }).click()
    await one.getByRole('heading', { name: 'Mill 2' }).waitFor()
    await one.getByRole('button', { name: 'Down', exact: true }).click()
    const sum = one.getByRole('region', { name: 'This round' })
    await sum.getByText('33 L of water and 7 L of concentrate').waitFor()
    await sum.getByText('Mill 2 (down)').waitFor()
    await sum.getByText(/Mill 1: .*3\.5\s°Brix.*with a photo/).waitFor()
    await sum.getByText('all of it is in the book').waitFor()
    await expectRoomForAThumb(one)
    await lookAt(one, `round-sum-${name}`, 'whole')
    await sum.getByRole('link', { name: 'Hand over to the next shift' }).click()
    await one.getByRole('form', { name: 'A note to the next shift' }).waitFor()

    // The second phone sees that nobody is on it any more, and that it may be done.
    await two.getByText(/RK was on it and no longer is/).waitFor({ timeout: 40_000 })
    await two.getByRole('button', { name: 'Next', exact: true }).click()
    await two.getByRole('heading', { name: 'Mill 2' }).waitFor()

    const entries = await entriesOf(served.address)
    expect(entries.filter(({ kind }) => kind === 'addition')).toMatchObject([{ sump: 's1', volume: 40, by: 'RK' }])
    const readings = entries.filter(({ kind, by }) => kind === 'reading' && by === 'RK')
    expect(readings).toHaveLength(4)
    expect(readings).toEqual(
      expect.arrayContaining([
        expect.objectContaining({ brix: 3.5, volume: 160, pumps: 'stopped' }),
        expect.objectContaining({ nitrite: { low: 10, high: 25 }, instrument: 'ns' }),
        expect.objectContaining({ ph: 9.2, typed: { ph: '9.2' } }),
        expect.objectContaining({ pending: true, method: 'dip slide' }),
      ]),
    )
    const { photo } = entries.find(({ kind }) => kind === 'observation') as { photo?: string }
    expect(photo).toMatch(/^[0-9a-f]{64}$/)
    const sent = await fetch(`${served.address}/api/v1/attachments/${photo}`)
    expect([sent.status, sent.headers.get('content-type')]).toEqual([200, 'image/jpeg'])
  },
)

test('on a short phone what to pour and how stand whole above the buttons, in every language', async () => {
  const containers = [{ id: 'b', name: 'Bucket 12 L', capacity: 12, graduation: 1 }]
  const served = await servedFile({ ...shopFile, containers })
  const page = await phoneOf('RK', { viewport: { width: 360, height: 640 } })
  await page.goto(`${served.address}/livez`)
  for (const language of ['en', 'de', 'es']) {
    await page.evaluate((chosen) => localStorage.setItem('sumpbook.reading', chosen), JSON.stringify({ language }))
    await page.goto(`${served.address}/round/s1`)
    // Lean and low; at the mark and lean, where something is drawn off first; rich and low.
    for (const [level, brix, said] of [
      ['160', '3.5', /40.L/],
      ['200', '3.5', /\d.L.*\d.L/],
      ['120', '7.5', /80.L/],
    ] as const) {
      await page.locator('.row.level').click()
      await page.locator('.row.level input').fill(level)
      await page.locator('#brix').fill(brix)
      await page.locator('#brix').focus()
      await page.locator('.say .headline').filter({ hasText: said }).waitFor()
      const edges = () =>
        page.evaluate(() => {
          const box = (what: string) => [...document.querySelectorAll(what)].at(-1)!.getBoundingClientRect()
          return {
            isUnderTheName: box('.say .headline').top >= box('#stop-name').bottom,
            isAboveTheFoot: box('.say .how').bottom <= box('.stop-foot').top,
            isFootWhole: box('.stop-buttons').bottom <= innerHeight,
          }
        })
      await expect
        .poll(edges, { message: `${language}: ${brix} in ${level} L` })
        .toEqual({ isUnderTheName: true, isAboveTheFoot: true, isFootWhole: true })
      await expectRoomForAThumb(page)
      await lookAt(page, `round-short-${language}-${level}`)
    }
  }
})

test('out of reach the stop takes a photo and a claim; both go once the book is there', async () => {
  const served = await bookServed()
  const page = await phoneOf('RK', { installs: true })
  await page.goto(`${served.address}/round`)
  await page.getByRole('link', { name: 'Begin with Mill 1' }).click()
  await page.getByText('due: pH, Nitrite').waitFor()
  // What a photo needs comes with the worker; what is shown out of reach is kept a few seconds after the app was opened.
  await isInstalled(page)
  await page.context().setOffline(true)
  await readLevelAndLook(page)
  await page.getByRole('button', { name: 'On to the refractometer' }).click()
  await press(page, '3.5')
  await page.getByLabel('A photo of what was found').setInputFiles({
    name: 'sump.png',
    mimeType: 'image/png',
    buffer: anyPicture,
  })
  await page.getByRole('button', { name: 'Leave the photo out' }).waitFor()
  await page.getByRole('button', { name: 'I am on it' }).click()
  await page.getByText(/You are on it until/).waitFor()
  await page.getByRole('button', { name: 'Not poured' }).click()
  await page.locator('label').filter({ hasText: 'no concentrate' }).click()
  await page.getByRole('button', { name: 'Write it down' }).click()
  await page.getByRole('heading', { name: 'Mill 2' }).waitFor()
  await page.getByRole('button', { name: 'Locked', exact: true }).click()
  const sum = page.getByRole('region', { name: 'This round' })
  await sum.getByText(/Mill 1 \(not poured: no concentrate\) and Mill 2 \(locked\)/).waitFor()
  await sum.getByText(/^\d entries wait on this device; 1 photo waits too$/).waitFor()
  await lookAt(page, 'round-sum-offline', 'whole')
  await page.getByRole('button', { name: /^\d waiting$/ }).click()
  await page.getByText('One photo waits here. It is sent by itself once the book is in reach').waitFor()
  await lookAt(page, 'device-sheet-photo')
  await page.getByRole('button', { name: 'Close' }).click()
  await page.context().setOffline(false)
  await sum.getByText('all of it is in the book').waitFor({ timeout: 30_000 })
  const photos = (await entriesOf(served.address)).flatMap(({ photo }) => (typeof photo === 'string' ? [photo] : []))
  expect(photos).toHaveLength(1)
  expect((await fetch(`${served.address}/api/v1/attachments/${photos[0]}`)).status).toBe(200)
})

test('a scanner’s burst of keys goes to the sump on the label, and a strange code is named', async () => {
  const served = await bookServed()
  const page = await phoneOf('RK')
  await page.goto(`${served.address}/round`)
  await page.getByRole('link', { name: 'Begin with Mill 1' }).waitFor()
  // As fast as a scanner: no key waits for what the page makes of the one before.
  const scan = (code: string) => Promise.all([...code, 'Enter'].map((key) => page.keyboard.press(key)))
  await scan('https://elsewhere.example/round/s9')
  await page
    .getByRole('alert')
    .getByText(/no sump of this book/)
    .waitFor()
  await scan('https://elsewhere.example/round/s2')
  await page.getByRole('heading', { name: 'Mill 2', level: 1 }).waitFor()
  // At a stop it comes into the field one is at, and leaves there what was typed.
  const level = page.getByLabel('Level, litres')
  await level.fill('160')
  await scan('https://elsewhere.example/round/s1')
  await page.getByRole('heading', { name: 'Mill 1', level: 1 }).waitFor()
  await page.getByLabel('Refractometer, °Brix').click()
  await scan('https://elsewhere.example/round/s9')
  await page
    .getByRole('alert')
    .getByText(/no sump of this book/)
    .waitFor()
  expect(await page.getByLabel('Refractometer, °Brix').inputValue()).toBe('')
  await page.waitForTimeout(300)
  await page.keyboard.type('3.5')
  expect(await page.getByLabel('Refractometer, °Brix').inputValue()).toBe('3.5')
  await page.waitForTimeout(300)
  await scan('mill2')
  await page.getByRole('heading', { name: 'Mill 2', level: 1 }).waitFor()
  expect(await level.inputValue()).toBe('160')
})

test('nothing comes under a thumb that taps on: no second tap of two, no key that has moved, no step that goes back', async () => {
  const served = await bookServed()
  const page = await phoneOf('RK')
  await page.goto(`${served.address}/round/s1`)
  // A glove that bounces: the button is another by the second tap, and the keys come where the look was.
  await page.getByRole('button', { name: 'On to look, smell, oil' }).dblclick()
  await page.locator('.step-signs').waitFor()
  for (const sense of ['Look', 'Smell']) {
    await page.getByRole('group', { name: sense }).locator('label').first().click()
  }
  await page.getByRole('group', { name: 'Oil' }).locator('label').first().dblclick()
  await page.locator('.step-tests').waitFor()
  for (const field of await page.locator('.tests-fields input').all()) expect(await field.inputValue()).toBe('')
  // A phone that wakes gives the focus back to the field that had it: the step stays.
  await page.getByLabel('Level, litres').click()
  await press(page, '160')
  await page.getByLabel('Level, litres').press('Enter')
  await page.locator('.step-signs').waitFor()
  expect(await page.evaluate(() => document.activeElement?.id)).not.toBe('level')
  // A figure leads to a pour, and the button for it comes beside the keys, not in the place of one.
  const brix = page.getByLabel('Refractometer, °Brix')
  await brix.click()
  const sign = (await page.getByRole('button', { name: '.', exact: true }).boundingBox())!
  await page.getByRole('button', { name: '3', exact: true }).click()
  await page.getByRole('button', { name: 'Poured as written · next' }).waitFor()
  await page.mouse.click(sign.x + sign.width / 2, sign.y + sign.height / 2)
  expect(await brix.inputValue()).toBe('3.')
})

test('where a cleanout is under way the stop says so first, and does not lead to a pour', async () => {
  const served = await bookServed()
  const page = await phoneOf('RK', { installs: true })
  await page.goto(`${served.address}/cleanouts/plan?sump=s1`)
  await page.getByRole('button', { name: 'Open the job sheet' }).click()
  const next = page.locator('.sheet-step.next')
  await next.getByRole('button', { name: 'Done, sign it' }).click()
  await page.locator('.sheet-step.done').first().waitFor()
  const title = await next.getByRole('heading').textContent()
  await page.goto(`${served.address}/round/s1`)
  const open = page.locator('.stop .note').filter({ hasText: 'Cleanout of Mill 1 is under way' })
  expect(await open.textContent()).toBe(`Cleanout of Mill 1 is under way; next: ${title}.`)
  await readLevelAndLook(page)
  await page.getByRole('button', { name: 'On to the refractometer' }).click()
  await press(page, '3.5')
  const poured = page.getByRole('button', { name: 'Poured as written · next' })
  await poured.waitFor()
  expect(await page.locator('.stop-buttons .main').allTextContents()).toEqual(['Next'])
  await expectRoomForAThumb(page)
  await lookAt(page, 'round-cleanout-open')
  // Out of reach it is still said, also where the app is opened anew, and at the next sump it is not.
  await isInstalled(page)
  await page.waitForLoadState('networkidle')
  await page.context().setOffline(true)
  await page.locator('.stop-head a').click()
  await page.locator('.stops a').nth(1).click()
  await page.getByRole('heading', { name: 'Mill 2', level: 1 }).waitFor()
  expect(await open.count()).toBe(0)
  await page.locator('.stop-head a').click()
  await page.locator('.stops a').first().click()
  await open.waitFor()
  await page.reload()
  await open.waitFor()
})
