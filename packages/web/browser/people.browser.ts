/** People, in a real browser on a real server that asks for accounts: from the first run to what an operator may not do. */
import { fileURLToPath } from 'node:url'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest'
import { openChromium } from './chromium.ts'
import { type ServedBook, serveBook } from './served-book.ts'

const phone = { width: 360, height: 740 }
const picture = (name: string) => fileURLToPath(new URL(`../../../.cache/pictures/${name}.png`, import.meta.url))
const password = 'slow grey heron 7'

let browser: Browser
beforeAll(async () => {
  browser = await openChromium()
})
afterAll(() => browser.close())

/** A phone of its own; what goes wrong in its pages fails the test, but for answers that say who may not. */
async function openPhone(served: ServedBook, place = '/'): Promise<Page> {
  const context = await browser.newContext({ viewport: phone, locale: 'en-GB', timezoneId: 'Europe/Berlin' })
  const page = await context.newPage()
  const wrong: string[] = []
  page.on('pageerror', (error) => wrong.push(error.message))
  page.on('console', (message) => {
    if (message.type() === 'error' && !/status of 40[13]/.test(message.text())) wrong.push(message.text())
  })
  onTestFinished(async () => {
    await context.close()
    expect(wrong).toEqual([])
  })
  await page.goto(served.address + place)
  return page
}

async function servedWithAccounts(): Promise<ServedBook & { code: string }> {
  const served = await serveBook('--accounts')
  onTestFinished(() => served.end())
  await expect.poll(() => served.said()).toMatch(/type this code/)
  const [, code] = /: ([0-9A-Z]{4}-[0-9A-Z]{4}-[0-9A-Z]{4})/.exec(served.said())!
  return Object.assign(served, { code: code! })
}

async function ownBook(page: Page, code: string): Promise<void> {
  const form = page.getByRole('form', { name: 'The first owner' })
  await form.getByLabel('Code').fill(code)
  await form.getByLabel(/Your name/).fill('Ada Owner')
  await form.getByLabel(/sign in with/).fill('ada')
  await form.getByLabel(/Password/).fill(password)
  expect(await page.evaluate(() => document.documentElement.scrollWidth > innerWidth)).toBe(false)
  await page.screenshot({ path: picture('first-run'), fullPage: true })
  await form.getByRole('button', { name: 'Own this book' }).click()
}

test('first run, an operator invited, a reading in their name, and no import for them', async () => {
  const served = await servedWithAccounts()
  const owner = await openPhone(served)
  await ownBook(owner, served.code)
  await owner.getByRole('button', { name: 'Look round the example shop' }).click()
  await owner.getByRole('heading', { name: 'Today', level: 1 }).waitFor()
  await owner.getByRole('link', { name: 'Ada Owner' }).waitFor()

  await owner.goto(`${served.address}/shop/people`)
  const invite = owner.getByRole('form', { name: 'Invite somebody' })
  await invite.getByLabel(/Name, as it stands/).fill('Ben Operator')
  await invite.getByRole('button', { name: 'Make a code' }).click()
  const code = (await owner.locator('.code-shown').textContent())!
  expect(code).toMatch(/^[0-9A-Z]{4}-[0-9A-Z]{4}-[0-9A-Z]{4}$/)
  await owner.screenshot({ path: picture('people'), fullPage: true })
  expect(await owner.evaluate(() => document.documentElement.scrollWidth > innerWidth)).toBe(false)

  const ben = await openPhone(served, '/join')
  const join = ben.getByRole('form', { name: 'Come in by a code' })
  await join.getByLabel('Code').fill(code)
  await join.getByLabel(/sign in with/).fill('ben')
  await join.getByLabel(/Password/).fill(password)
  await join.getByRole('button', { name: 'Go in' }).click()
  await ben.getByRole('link', { name: 'Ben Operator' }).waitFor()
  await ben.goto(`${served.address}/round/tc2`)
  await ben.getByRole('heading', { name: 'Turning centre 2' }).waitFor()
  for (const key of ['1', '3', '0']) await ben.getByRole('button', { name: key, exact: true }).click()
  await ben.getByRole('button', { name: 'On to look, smell, oil' }).click()
  for (const sense of ['Look', 'Smell', 'Oil']) {
    await ben.getByRole('group', { name: sense }).locator('label').first().click()
  }
  for (const key of ['4', '.', '1']) await ben.getByRole('button', { name: key, exact: true }).click()
  await ben.getByRole('button', { name: 'Poured as written · next' }).click()
  await ben.getByText('all saved').last().waitFor()

  await owner.goto(`${served.address}/journal`)
  const first = owner.locator('.journal-day li').filter({ hasText: '4.1 °Brix' }).first()
  await first.getByText('Ben Operator').waitFor()
  await first.locator('a.time').click()
  await owner.getByText('Ben Operator').waitFor()
  await owner.getByText('Reached the book').waitFor()
  await owner.screenshot({ path: picture('entry'), fullPage: true })

  const answers = await ben.evaluate(async () => {
    const form = new FormData()
    form.set('file', new Blob(['{}']), 'shop.json')
    const [brought, taken] = await Promise.all([
      fetch('/api/v1/import', { method: 'POST', body: form }),
      fetch('/api/v1/export'),
    ])
    return [brought.status, taken.status]
  })
  expect(answers).toEqual([403, 403])
})

test('who signs out is out, and comes in again by name and password', async () => {
  const served = await servedWithAccounts()
  const page = await openPhone(served)
  await ownBook(page, served.code)
  await page.getByRole('heading', { name: 'A new book' }).waitFor()
  await page.evaluate(() => fetch('/api/v1/demo', { method: 'POST' }).then(({ status }) => status))
  await page.goto(`${served.address}/shop/account`)
  await page.getByRole('heading', { name: 'Ada Owner' }).waitFor()
  await page.screenshot({ path: picture('account'), fullPage: true })
  expect(await page.evaluate(() => document.documentElement.scrollWidth > innerWidth)).toBe(false)
  await page.getByRole('button', { name: 'Sign out' }).click()
  const form = page.getByRole('form', { name: 'Sign in' })
  await form.getByLabel(/Name or mail/).fill('ada')
  await form.getByLabel('Password').fill('not this one')
  await form.getByRole('button', { name: 'Sign in' }).click()
  await form.getByText('do not belong together').waitFor()
  await form.getByLabel('Password').fill(password)
  await form.getByRole('button', { name: 'Sign in' }).click()
  await page.getByRole('link', { name: 'Ada Owner' }).waitFor()
})

test('on a shared tablet one says by PIN who one is', async () => {
  const served = await servedWithAccounts()
  const page = await openPhone(served)
  await ownBook(page, served.code)
  await page.getByRole('heading', { name: 'A new book' }).waitFor()
  const call = (method: string, path: string, body: unknown) =>
    page.evaluate(
      async ([how, where, what]) =>
        (
          await fetch(`/api/v1${where}`, {
            method: how,
            headers: { 'content-type': 'application/json' },
            body: JSON.stringify(what),
          })
        ).status,
      [method, path, body] as const,
    )
  expect(await call('POST', '/demo', {})).toBe(201)
  expect(await call('PUT', '/me/pin', { pin: '2468', password })).toBe(204)
  expect(await call('POST', '/devices', { name: 'Tablet', here: true })).toBe(201)
  expect(await page.evaluate(() => fetch('/api/v1/session', { method: 'DELETE' }).then(({ status }) => status))).toBe(
    204,
  )
  await page.goto(served.address)
  await page.getByRole('link', { name: 'Who is here?' }).click()
  await page.getByRole('button', { name: 'Ada Owner' }).click()
  await page.getByRole('textbox', { name: 'PIN of Ada Owner' }).fill('2468')
  await page.screenshot({ path: picture('switch'), fullPage: true })
  await page.getByRole('button', { name: 'I am Ada Owner' }).click()
  await page.getByRole('link', { name: 'Ada Owner' }).waitFor()
})
