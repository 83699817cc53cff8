/** Without signal, in a real Chromium: cut off in the middle of a round, killed, opened again, and nothing lost or doubled. */
import type { Page } from 'playwright-core'
import { expect, test, vi } from 'vitest'
import { journalIds } from './journal-ids.ts'
import { isWide, lookAt, screensOf, servedExample } from './on-a-screen.ts'
import { isInstalled, kept, pageOf, phoneOf, waitingIds } from './phone-to-kill.ts'
import { goOnRound, walkStop } from './walk-stop.ts'

vi.setConfig({ testTimeout: 180_000 })

test.each(screensOf('phone'))(
  'on a %s, cut off in the middle of a round, the browser killed and opened again: sixty entries, each in the book once',
  {
    timeout: 240_000,
  },
  async (name, screen) => {
    const served = await servedExample()
    const phoneHere = await phoneOf()
    let profile = await phoneHere.open()
    let page = await pageOf(profile, screen)
    await page.goto(served.address)
    await page.getByRole('heading', { name: 'Today', level: 1 }).waitFor()
    await isInstalled(page)
    await page.waitForFunction(() => document.querySelector('.state')?.textContent === 'all saved')
    const before = await journalIds(served.address)
    await goOnRound(page, served.address)
    await walkStop(page)
    await page.getByText('all saved').filter({ visible: true }).first().waitFor()

    await served.stop()
    const written = new Set((await kept(page, 'outbox')).map(({ entry }) => entry!.id))
    await walkStop(page)
    await lookAt(page, `offline-stop-${name}`)
    expect(await isWide(page)).toBe(false)
    for (const id of await waitingIds(page)) written.add(id)
    await profile.kill()

    // Nothing answers: the app starts from the phone, with what was last seen.
    profile = await phoneHere.open()
    page = await pageOf(profile, screen)
    await page.goto(served.address)
    await page.getByText(/As of .*out of reach now/).waitFor()
    await page.getByRole('heading', { name: 'Today', level: 1 }).waitFor()
    await lookAt(page, `offline-today-${name}`)
    expect(await isWide(page)).toBe(false)
    for (const id of written) expect((await kept(page, 'outbox')).map(({ entry }) => entry!.id)).toContain(id)
    while (written.size < 60) {
      if (!/\/round\/./.test(page.url())) await goOnRound(page, served.address)
      await walkStop(page)
      for (const id of await waitingIds(page)) written.add(id)
    }
    await page.goto(served.address)
    await page.getByRole('button', { name: /\d+ waiting/ }).click()
    await page.getByRole('heading', { name: 'Not in the book yet' }).waitFor()
    await lookAt(page, `offline-queue-${name}`)
    expect(await isWide(page)).toBe(false)
    await profile.kill()

    await served.restart()
    profile = await phoneHere.open()
    page = await pageOf(profile, screen)
    await page.goto(served.address)
    await page.getByRole('button', { name: 'all saved' }).waitFor()
    expect(await waitingIds(page)).toEqual([])
    const after = await journalIds(served.address)
    expect(new Set(after).size).toBe(after.length)
    expect(after.length).toBe(before.length + written.size)
    for (const id of written) expect(after).toContain(id)
  },
)

test('a phone that dies just after a stop was written knows that it was', async () => {
  const served = await servedExample()
  const phoneHere = await phoneOf()
  let profile = await phoneHere.open()
  let page = await pageOf(profile)
  await goOnRound(page, served.address)
  const stop = page.url()
  const name = (await page.getByRole('heading', { level: 1 }).textContent())!
  // What was typed has had the time to reach the disk; that it was written down and dropped has not.
  await walkStop(page, 7_000)
  const written = (await kept(page, 'outbox')).length
  await profile.kill()
  expect(written).toBeGreaterThan(0)

  profile = await phoneHere.open()
  page = await pageOf(profile)
  await page.goto(`${served.address}/round`)
  await page.getByRole('link', { name: new RegExp(`^${name}.*(was read|poured)`) }).waitFor()
  await page.goto(stop)
  await page.getByRole('button', { name: 'On to look, smell, oil' }).waitFor()
  expect(await page.getByLabel('Refractometer, °Brix').inputValue()).toBe('')
  expect(await page.evaluate(() => Object.keys(localStorage).filter((key) => key.includes('draft')))).toEqual([])
})

test('two open pages of one phone: both write out of reach, each entry is in the book once, and each page sees what the other did', async () => {
  const served = await servedExample()
  const profile = await (await phoneOf()).open()
  const [one, two] = [await pageOf(profile), await pageOf(profile)]
  for (const page of [one, two]) {
    await page.goto(served.address)
    await page.getByRole('heading', { name: 'Today', level: 1 }).waitFor()
    await isInstalled(page)
    // A round is on the phone once it was there: what is fetched ahead takes a moment.
    await page.getByRole('link', { name: 'Round', exact: true }).click()
    await page.locator('.stops a').first().waitFor()
    await page.getByRole('link', { name: 'Today', exact: true }).click()
  }
  const before = await journalIds(served.address)
  await profile.context.setOffline(true)
  const writtenBy: string[][] = []
  for (const page of [one, two]) {
    const others = await waitingIds(page)
    await page.getByRole('link', { name: 'Round', exact: true }).click()
    await page
      .locator('.stops a')
      .nth(page === one ? 0 : 4)
      .click()
    await walkStop(page)
    writtenBy.push((await waitingIds(page)).filter((id) => !others.includes(id)))
  }
  for (const ids of writtenBy) expect(ids.length).toBeGreaterThanOrEqual(2)
  const written = writtenBy.flat()
  expect((await waitingIds(one)).toSorted()).toEqual(written.toSorted())
  const notCounted = `${written.length} entries wait on this device: the sentences above and the cart do not count them yet.`
  for (const page of [one, two]) {
    await page.locator('.stop-head a').click()
    await page.getByRole('button', { name: `${written.length} waiting` }).waitFor()
    await page.getByRole('link', { name: 'Today', exact: true }).click()
    await page.getByText(notCounted).waitFor()
  }
  await lookAt(one, 'offline-not-counted')
  expect(await isWide(one)).toBe(false)
  await profile.context.setOffline(false)
  for (const page of [one, two]) {
    await page.getByRole('button', { name: 'all saved' }).waitFor()
    expect(await page.getByText(notCounted).count()).toBe(0)
    expect(await waitingIds(page)).toEqual([])
  }
  const after = await journalIds(served.address)
  expect(after.length).toBe(before.length + written.length)
  for (const id of written) expect(after.filter((one) => one === id)).toEqual([id])
})

/** Where a sump stands with what waits: in order, or on the list with what it still wants. */
const counted = (page: Page, name: string) =>
  page
    .getByRole('region', { name: 'In order' })
    .getByRole('link', { name })
    .or(page.getByRole('article').filter({ hasText: name }).getByText('What waits on this device is counted.'))

test('kept off line by hand, nothing is sent until it is switched back; the pour counts on the phone meanwhile', async () => {
  const served = await servedExample()
  const profile = await (await phoneOf()).open()
  const page = await pageOf(profile)
  await page.goto(served.address)
  await page.getByRole('heading', { name: 'Today', level: 1 }).waitFor()
  const before = await journalIds(served.address)
  await page.getByRole('button', { name: 'all saved' }).click()
  await page.getByRole('button', { name: 'Stay off line' }).click()
  await page.getByText(/kept off line by you/).waitFor()
  await lookAt(page, 'offline-stay')
  await page.getByRole('button', { name: 'Close' }).click()
  const line = page
    .getByRole('article')
    .filter({ has: page.getByRole('button', { name: 'Poured as written' }) })
    .first()
  const name = (await line.getByRole('heading').textContent())!
  await line.getByRole('button', { name: 'Poured as written' }).click()
  await page.getByText('Kept on this device').waitFor()
  await counted(page, name).waitFor()
  await page.getByRole('button', { name: /off line · \d wait/ }).waitFor()
  await lookAt(page, 'offline-counted', 'whole')
  expect(await isWide(page)).toBe(false)
  expect(await journalIds(served.address)).toEqual(before)
  await page.reload()
  await counted(page, name).waitFor()
  await page.locator('.off-line').getByRole('button', { name: 'Go back on line' }).click()
  await page.getByRole('button', { name: 'all saved' }).waitFor()
  expect((await journalIds(served.address)).length).toBeGreaterThan(before.length)
})
