/** A cleanout from its plan to its later slide on the example shop, in a real browser on a real server; and what comes back on its days. */
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { desk, expectRoomForAThumb, fileBrowser, fileExample, lookAt, openPage, phone } from './on-a-screen.ts'

const browser = fileBrowser()
const served = fileExample()

const openAt = (viewport: { width: number; height: number }, place: string) =>
  openPage(browser(), served().address + place, { viewport })

const signNext = async (page: Page) => {
  const next = page.locator('.sheet-step.next')
  const title = await next.getByRole('heading').textContent()
  await next.getByRole('button', { name: 'Done, sign it' }).click()
  await page.locator('.sheet-step.done', { hasText: title! }).first().waitFor()
}

test('a cleanout is planned, signed step by step on a phone, rinsed again where it must be, and waits for its slide', async () => {
  const page = await openAt(phone, '/cleanouts')
  await page.getByRole('link', { name: 'Plan a cleanout' }).click()
  await page.getByText('the machine stands for about').waitFor()
  await expectRoomForAThumb(page)
  await lookAt(page, 'cleanout-plan-phone', 'whole')
  await page.getByRole('button', { name: 'Open the job sheet' }).click()
  await page.getByRole('heading', { name: /^Cleanout of/ }).waitFor()
  await expectRoomForAThumb(page)
  await page.getByRole('button', { name: 'I am on it' }).click()
  await page.getByText('You are on it until').waitFor()
  await signNext(page)
  await lookAt(page, 'cleanout-sheet-phone', 'whole')
  for (let n = 0; n < 7; n++) await signNext(page)
  const look = page.locator('.sheet-step.next')
  await look.getByRole('button', { name: 'Done, sign it' }).click()
  await look.getByText('all four are asked').waitFor()
  await look.getByLabel('pH of the weak fluid as poured').fill('9')
  await look.getByLabel('pH at the drain').fill('10,4')
  await look.getByRole('radio', { name: 'Clear' }).check()
  await look.getByRole('radio', { name: 'No smell' }).check()
  await look.getByRole('button', { name: 'Done, sign it' }).click()
  await page.getByRole('heading', { name: 'Rinse with weak fluid, again' }).waitFor()
  await page.getByText('cleaner is left').waitFor()
  await lookAt(page, 'cleanout-rinse-phone', 'whole')
  await signNext(page)
  const again = page.locator('.sheet-step.next')
  await again.getByLabel('pH of the weak fluid as poured').fill('9')
  await again.getByLabel('pH at the drain').fill('9.2')
  await again.getByRole('radio', { name: 'Clear' }).check()
  await again.getByRole('radio', { name: 'No smell' }).check()
  await again.getByRole('button', { name: 'Done, sign it' }).click()
  await page.locator('.sheet-step.next', { hasText: 'Fill the fresh charge' }).waitFor()
  await signNext(page)
  await page.locator('.sheet-step.next').getByLabel('pH', { exact: true }).fill('9.3')
  await signNext(page)
  await page.getByText('It waits for its later slide').waitFor()
  await expectRoomForAThumb(page)
  const journal = await (await fetch(`${served().address}/api/v1/entries?limit=60`)).json()
  const kinds = (journal as { entries: { kind: string }[] }).entries.map(({ kind }) => kind)
  expect(kinds).toEqual(expect.arrayContaining(['cleanout', 'charge', 'reading', 'signoff']))
  await served().restart()
  await page.reload()
  await page.getByText('It waits for its later slide').waitFor()
}, 120_000)

test('a sheet on a desk and on paper keeps each step whole', async () => {
  const page = await openAt(desk, '/cleanouts/plan')
  await page.getByText('the machine stands for about').waitFor()
  await lookAt(page, 'cleanout-plan-desk', 'whole')
  await page.getByRole('button', { name: 'Open the job sheet' }).click()
  await page.getByRole('heading', { name: /^Cleanout of/ }).waitFor()
  await lookAt(page, 'cleanout-sheet-desk', 'whole')
  await page.emulateMedia({ media: 'print' })
  await page.getByText('Done by', { exact: false }).first().waitFor()
  expect(await page.getByRole('button', { name: 'Done, sign it' }).isVisible()).toBe(false)
  await page.setViewportSize({ width: 688, height: 971 })
  await lookAt(page, 'cleanout-sheet-paper', 'whole')
  const whole = await page.evaluate(() =>
    [...document.querySelectorAll('.sheet-step')].map((step) => getComputedStyle(step).breakInside),
  )
  expect(new Set(whole)).toEqual(new Set(['avoid']))
  expect((await page.pdf({ format: 'A4' })).subarray(0, 5).toString()).toBe('%PDF-')
}, 60_000)

test('several machines are planned side by side', async () => {
  const page = await openAt(phone, '/cleanouts/together')
  const machines = page.getByRole('checkbox')
  await machines.nth(0).check()
  await machines.nth(1).check()
  await page.getByText(/2 machines are done after/).waitFor()
  await expectRoomForAThumb(page)
  await lookAt(page, 'side-by-side-phone', 'whole')
}, 60_000)

test('upkeep is taken on, stands on Today, and one tap finishes it', async () => {
  const page = await openAt(phone, '/cleanouts/upkeep')
  // The example shop has tasks of its own: what is proposed besides is folded.
  await page.getByText('Proposals', { exact: true }).click()
  await page.getByRole('button', { name: 'Take on', exact: true }).first().waitFor()
  await expectRoomForAThumb(page)
  await page.getByRole('button', { name: 'Take on', exact: true }).first().click()
  await page.getByText('Written down.').waitFor()
  await page.getByRole('button', { name: 'Done', exact: true }).first().waitFor()
  await lookAt(page, 'upkeep-phone', 'whole')
  await page.getByRole('button', { name: 'Done', exact: true }).first().click()
  await page.getByText('done today').first().waitFor()
}, 60_000)

test('a machine that will stand has its sheet', async () => {
  const page = await openAt(phone, '/cleanouts/shutdown')
  await page.getByRole('radio', { name: 'Back into use' }).check()
  await page.getByText('Look and smell first').waitFor()
  await expectRoomForAThumb(page)
  await lookAt(page, 'restart-phone', 'whole')
  await page.getByRole('button', { name: 'Open the sheet' }).click()
  await page.getByRole('heading', { name: /back into use$/ }).waitFor()
}, 60_000)
