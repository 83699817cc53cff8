/** Mixing and Water on the example shop, in a real browser on a real server, at the width of a phone and of a desk. */
import type { Locator, Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { desk, expectRoomForAThumb, fileBrowser, fileExample, openPage, phone, showInDocs } from './on-a-screen.ts'

const browser = fileBrowser()
const served = fileExample()

const openAt = (viewport: { width: number; height: number }, place: string) =>
  openPage(browser(), served().address + place, { viewport })

const fillAll = async (part: Locator, texts: readonly (readonly [label: string | RegExp, text: string])[]) => {
  for (const [label, text] of texts) await part.getByLabel(label).fill(text)
}

const part = (page: Page, name: string) => page.getByRole('region', { name, exact: true })

test('on a phone five places stand at the thumb, the others behind More', async () => {
  const page = await openAt(phone, '/mixing')
  const places = page.getByRole('navigation', { name: 'Places' })
  await places.getByRole('link', { name: 'Mixing' }).waitFor()
  expect(await places.getByRole('link', { name: 'Water' }).isVisible()).toBe(false)
  const more = places.getByRole('button', { name: 'More' })
  await more.click()
  await places.getByRole('link', { name: 'Journal' }).waitFor()
  await page.keyboard.press('Escape')
  expect(await places.getByRole('link', { name: 'Journal' }).isVisible()).toBe(false)
  expect(await more.evaluate((button) => button === document.activeElement)).toBe(true)
  await page.keyboard.press('Enter')
  await places.getByRole('link', { name: 'Water' }).click()
  await page.getByRole('heading', { name: 'Water', level: 1 }).waitFor()
  expect(await places.getByRole('link', { name: 'Water' }).isVisible()).toBe(false)
  await expectRoomForAThumb(page)
})

test.each([
  ['a phone', phone],
  ['a desk', desk],
])('the bench of %s works a sump’s figures out, and follows whatever is changed', async (_, size) => {
  const page = await openAt(size, '/mixing')
  const bench = part(page, 'Recipe')
  const answer = bench.getByRole('region', { name: 'What to pour' })
  await bench.getByLabel('Sump', { exact: true }).selectOption({ label: 'Turning centre 2' })
  // Target, band and the mixer's reach are the book's; what stands in it depends on the hour the example was made.
  await answer.getByText(/It will then stand at/).waitFor()
  await fillAll(bench, [
    [/^In it now/, '130'],
    [/^Full mark/, '180'],
    [/^Strength now/, '4'],
  ])
  // 4 % in 130 L hold 5.2 L; 50 L of the mixer's strongest, 15 %, bring 7.5 L: 12.7 in 180 are 7.06 %.
  await answer.getByText('Add 50 L at 15 %').waitFor()
  await answer.getByText('It will then stand at 7.1 %').waitFor()
  await answer.getByText(/50\sL from mixing station at 15\s%, dial 8/).waitFor()
  await expectRoomForAThumb(page)
  if (size === desk) await showInDocs(page, 'mixing')
  // 5,2 % in 130 L hold 6.76 L; 13.5 L make 7.5 % of 180 L: 6.74 in 50 L are 13.48 %.
  await bench.getByLabel('Strength now, %').fill('5,2')
  await answer.getByText('Add 50 L at 13.5 %').waitFor()
  await bench.getByLabel('Target, %').fill('99')
  await bench.getByText(/expected at most the upper end of the band/).waitFor()
  await bench.getByRole('button', { name: 'Back to the book’s figures' }).click()
  await expect.poll(() => bench.getByLabel('Target, %').inputValue()).toBe('7.5')
  await fillAll(bench, [
    [/^In it now/, '130'],
    [/^Full mark/, '180'],
    [/^Strength now/, '4'],
  ])
  await bench.getByText('Marks, mixer, waters, premix').click()
  await fillAll(bench, [
    ['Premix 1, strength, %', '15'],
    ['Premix 1, litres', '60'],
  ])
  await answer
    .getByText(/50\sL of premix 1 at 15\s%/)
    .first()
    .waitFor()
})

test('a batch, a ratio and one cart', async () => {
  const page = await openAt(phone, '/mixing/batch')
  const batch = part(page, 'Batch')
  await fillAll(batch.locator('.tool'), [
    ['Mix wanted, litres', '500'],
    ['Strength, %', '1 in 20'],
  ])
  await batch.getByText('25 L of concentrate into 475 L of water.').waitFor()
  await batch.getByText('In fillings of a tank, from drums').click()
  await fillAll(batch, [
    ['The tank takes, litres', '200'],
    ['A full drum holds, litres', '205'],
    ['In the open drum, litres', '20'],
  ])
  await batch.getByText('In 3 fillings of 167 L').waitFor()
  await batch.getByText('20 L from the open drum, then 1 full drum to open; 200 L will be left').waitFor()
  const ratio = part(page, 'Ratio and percent')
  await ratio.getByLabel('1 part to N parts water').fill('20')
  await ratio.getByText('it is the same as 1 in 21').waitFor()
  expect(await ratio.getByLabel('Strength, %').inputValue()).toBe('4.76')
  await expectRoomForAThumb(page)

  await page.getByRole('link', { name: 'Cart', exact: true }).click()
  const cart = part(page, 'Cart')
  await cart.getByRole('region', { name: 'The cart' }).locator('.batches li').first().waitFor()
  await cart.getByRole('radio', { name: '1', exact: true }).check()
  expect(await cart.locator('.batches li').count()).toBe(1)
  await expectRoomForAThumb(page)
  // What was typed is still there.
  await page.getByRole('link', { name: 'Batch', exact: true }).click()
  await batch.getByText('25 L of concentrate into 475 L of water.').waitFor()
})

test('a mixer is checked and calibrated, and the book keeps both', async () => {
  const page = await openAt(phone, '/mixing/mixer')
  const mixer = part(page, 'Mixer')
  // Between dial 4 (6 %) and 5 (8 %).
  await mixer.getByLabel('Strength wanted, %').fill('7')
  await mixer.getByText('For 7.0 % set the dial to 4.5').waitFor()
  await mixer.getByRole('radio', { name: '%' }).check()
  await fillAll(mixer, [
    ['Dial set to', '5'],
    ['It pours, %', '7,2'],
  ])
  await mixer.getByText(/0\.8 weaker, 10\s% of it/).waitFor()
  await mixer.getByRole('button', { name: 'Write the check down' }).click()
  await mixer.getByText('Written down.').waitFor()
  await mixer
    .getByRole('listitem')
    .first()
    .getByText(/it pours 7\.2\s%/)
    .waitFor()
  await fillAll(mixer, [
    ['Setting 1, dial', '1'],
    ['Setting 1, pours, %', '2'],
    ['Setting 2, dial', '8'],
    ['Setting 2, pours, %', '16'],
  ])
  await expectRoomForAThumb(page)
  await mixer.getByRole('button', { name: 'Save as Mixing station’s settings' }).click()
  // 2 % to 16 % over seven steps: 7 % is 2.5 steps up.
  await mixer.getByText('For 7.0 % set the dial to 3.5').waitFor()
  const { mixers } = (await (await fetch(`${served().address}/api/v1/book`)).json()) as {
    mixers: { settings: unknown }[]
  }
  expect(mixers[0]!.settings).toEqual([
    [1, 2],
    [8, 16],
  ])
})

test('a factor found from known mixes reads the fluid from a day on', async () => {
  const page = await openAt(desk, '/mixing/factor')
  const factor = part(page, 'Factor')
  await factor.getByLabel('Fluid', { exact: true }).selectOption({ label: 'Blue soluble 40' })
  const mixes = [
    ['2', '1,6'],
    ['4', '3.2'],
    ['6', '4.8'],
    ['8', '6.4'],
  ] as const
  for (const [i, [percent, brix]] of mixes.entries()) {
    await factor.getByLabel(`Mix ${i + 1}, made up to, %`).fill(percent)
    await factor.getByLabel(`Mix ${i + 1}, read, °Brix`).fill(brix)
  }
  await factor.getByText(/1\.250\s% per °Brix/).waitFor()
  await factor.getByText(/a straight line serves/).waitFor()
  await factor.getByText(/with 1\.000, which lies outside/).waitFor()
  await factor.getByRole('button', { name: 'Save as Blue soluble 40’s factor' }).click()
  await factor.getByText('The book reads Blue soluble 40 with 1.250, which these mixes bear out.').waitFor()
})

test('a water’s analysis is written down, in the unit of its report, and reckoned with', async () => {
  const page = await openAt(phone, '/water')
  const tap = part(page, 'Tap water')
  const { measurements } = (await (await fetch(`${served().address}/api/v1/things/water/tap/measurements`)).json()) as {
    measurements: unknown[]
  }
  await tap.getByText(`All ${measurements.length} analyses`).waitFor()
  await expectRoomForAThumb(page)
  await tap.getByRole('button', { name: 'Write an analysis of Tap water' }).click()
  // 14 °dH are 14 × 17.848 = 249.9 ppm.
  await fillAll(tap, [
    [/^Hardness/, '14 °dH'],
    ['Chloride, mg/L', '35'],
  ])
  await expectRoomForAThumb(page)
  await tap.getByRole('button', { name: 'Write it down' }).click()
  await tap.getByText(`All ${measurements.length + 1} analyses`).waitFor()
  await tap.getByText('250 ppm', { exact: true }).waitFor()
  await tap.getByText('35 mg/L', { exact: true }).waitFor()
  const { waters } = (await (await fetch(`${served().address}/api/v1/book`)).json()) as {
    waters: { id: string; hardness: number; chloride: number }[]
  }
  expect(waters.find(({ id }) => id === 'tap')).toMatchObject({ hardness: expect.closeTo(249.87, 1), chloride: 35 })
  const every = part(page, 'Hardness in every unit')
  await every.getByLabel('Hardness', { exact: true }).fill('100')
  // 100 / 17.848 = 5.60 °dH.
  await every.getByText('5.60').waitFor()
})

test.each([
  ['a phone', phone],
  ['a desk', desk],
])('minerals ahead, two futures, on %s', async (_, size) => {
  const page = await openAt(size, '/water/ahead')
  const ahead = part(page, 'Ahead')
  await ahead.getByRole('radio', { name: 'chloride' }).check()
  // V 200, E 6, D 2, plain water of 50 mg/L: at rest 200; 150 = 200 − 150 e^(−t/100) at 100 ln 3 = 110 days.
  await fillAll(ahead, [
    [/^Full mark/, '200'],
    [/^Evaporates a day/, '6'],
    [/^Carried off a day/, '2'],
    [/^Chloride in it now/, '50'],
    [/^The most wanted/, '150'],
    [/^Top-ups poured at/, '0'],
    [/^Chloride of the water now/, '50'],
    [/^Chloride of the other/, '1'],
  ])
  const answer = ahead.getByRole('region', { name: 'Minerals ahead' })
  await answer.getByText(/Tap water: at 150\smg\/L .*in 110 days; it comes to rest near 200\smg\/L/).waitFor()
  await answer.getByText(/Deionised water: never at 150\smg\/L; it comes to rest near 4\smg\/L/).waitFor()
  await answer.getByRole('img', { name: /chloride over 26 weeks: on Tap water from 50 mg\/L/ }).waitFor()
  await expectRoomForAThumb(page)
  if (size !== desk) return
  await page.evaluate(() => scrollTo(0, 0))
  await showInDocs(page, 'water')
})

test('a blend keeps inside its limits, and limits in conflict are named', async () => {
  const page = await openAt(phone, '/water/blend')
  const blend = part(page, 'Blend')
  await blend.getByLabel('To blend, litres').waitFor()
  const [tap, deionised] = [
    blend.getByRole('group', { name: 'Tap water' }),
    blend.getByRole('group', { name: 'Deionised water' }),
  ]
  await fillAll(tap, [
    ['Hardness, ppm', '260'],
    ['Chloride, mg/L', '30'],
  ])
  await fillAll(deionised, [
    ['Hardness, ppm', '10'],
    ['Chloride, mg/L', '0'],
  ])
  await fillAll(blend, [
    ['To blend, litres', '100'],
    [/^Least hardness/, '100'],
    [/^Most hardness/, '160'],
  ])
  // Tap is the cheaper: as much of it as 160 ppm allow, (160 − 10) / 250 = 0.6.
  await blend.getByText('60 L of tap water and 40 L of deionised water.').waitFor()
  // Chloride of at most 6 allows a fifth of tap water, 60 ppm; 100 ppm take 36 %, 10.8 mg/L.
  await blend.getByLabel(/^Most chloride/).fill('6')
  await blend.getByText('No blend of these waters keeps within the limits.').waitFor()
  await blend.getByText(/Hardness at least 100\sppm: .* 60\sppm/).waitFor()
  await blend.getByText(/Chloride at most 6\smg\/L: .* 11\smg\/L/).waitFor()
  await expectRoomForAThumb(page)
})

test('a purifier is sized and paid back, every assumption in sight', async () => {
  const page = await openAt(phone, '/water/treatment')
  const treatment = part(page, 'Treatment')
  await treatment.getByText(/It takes what is used a day/).waitFor()
  await fillAll(treatment, [
    [/^Treated water a day/, '150'],
    [/^Its price, EUR per L/, '0,004'],
    ['It makes a day, litres', '200'],
    [/^Its price, EUR$/, '2400'],
    [/^Recovery/, '50'],
    [/^Rejection/, '95'],
    ['Upkeep a year, EUR', '300'],
    [/^Saved a year/, '1800'],
  ])
  // 54,750 L a year: as much again down the drain at 0.004 is 219, with upkeep 519; 2400 / (1800 − 519) = 1.9 years.
  await treatment.getByText(/225\sL a day; the unit makes 200\sL a day: too little/).waitFor()
  await treatment.getByText('in 1.9 years').waitFor()
  await expectRoomForAThumb(page)
})

test('what if: strength and days between fills are slid, and the weeks ahead follow', async () => {
  const page = await openAt(phone, '/sumps/mill7')
  const ahead = part(page, 'What if')
  await ahead.getByRole('button', { name: 'Try another water or strength' }).click()
  await ahead.getByText('This holds the target.').waitFor()
  const strength = ahead.getByRole('slider', { name: 'Poured at' })
  const inFourWeeks = async (key: string, said: string) => {
    await strength.press(key)
    await ahead.getByText(said, { exact: true }).waitFor()
    const line = await ahead.getByRole('listitem').first().textContent()
    return Number(/ (\d+\.\d)\s%/.exec(line ?? '')?.[1])
  }
  const lean = await inFourWeeks('Home', 'Poured at 0 %:')
  const rich = await inFourWeeks('End', 'Poured at 15 %:')
  expect(rich).toBeGreaterThan(lean)
  await ahead.getByRole('slider', { name: 'Between two fills' }).press('End')
  await ahead.getByText('Filled to the mark every 28 days, first today.').waitFor()
  await ahead.getByRole('button', { name: 'Back to what holds the target' }).click()
  await ahead.getByText('This holds the target.').waitFor()
  await expectRoomForAThumb(page)
})
