/** What a phone may have in store for what is written on it: no room, a wrong clock, another version of the app, plain http. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { openBook, openSqliteStore } from '@sumpbook/book'
import { buildApp } from '@sumpbook/server'
import { expect, inject, onTestFinished, test, vi } from 'vitest'
import { journalIds } from './journal-ids.ts'
import { isWide, lookAt, servedBook, servedExample } from './on-a-screen.ts'
import { isInstalled, kept, pageOf, phoneOf, waitingIds } from './phone-to-kill.ts'
import { walkStop } from './walk-stop.ts'

vi.setConfig({ testTimeout: 180_000 })

test('a phone without room says so, holds what was written while the page is open, and sends it when the book is there', async () => {
  const served = await servedExample()
  const profile = await (await phoneOf()).open()
  const page = await pageOf(profile)
  await page.goto(`${served.address}/round`)
  await page.locator('.stops a').first().click()
  await page.getByRole('button', { name: 'On to look, smell, oil' }).waitFor()
  await isInstalled(page)
  const before = await journalIds(served.address)
  await page.evaluate(() => {
    // The disk is full from now on.
    const { add } = IDBObjectStore.prototype
    IDBObjectStore.prototype.add = function (...value) {
      if (this.name === 'outbox') throw new DOMException('There is no room on the disk.', 'QuotaExceededError')
      return add.apply(this, value)
    }
  })
  await served.stop()
  await page.locator('label').filter({ hasText: 'at the mark' }).click()
  await page.getByRole('button', { name: 'Next', exact: true }).click()
  await page
    .getByRole('alert')
    .getByText(/did not keep it and the book is out of reach/)
    .waitFor()
  await page.getByRole('button', { name: '1 in this page only' }).waitFor()
  expect(await page.getByLabel('Level, litres').inputValue()).toBe('at the mark')
  await lookAt(page, 'offline-full')
  expect(await isWide(page)).toBe(false)
  await page.getByRole('button', { name: '1 in this page only' }).click()
  await page.getByText(/This device did not keep something \(There is no room on the disk\.\)/).waitFor()
  await lookAt(page, 'offline-full-sheet')
  await served.restart()
  await page.getByRole('button', { name: 'Send now' }).click()
  await page.getByRole('button', { name: 'all saved' }).waitFor()
  expect((await journalIds(served.address)).length).toBe(before.length + 1)
})

test('what an earlier version left in its own place is moved over and sent, once', async () => {
  const served = await servedExample()
  const profile = await (await phoneOf()).open()
  const page = await pageOf(profile)
  const id = '01900000-0000-7000-8000-0000000000aa'
  const entry = { id, at: '2026-11-01T08:00:00.000+01:00', kind: 'observation', sump: 'tc2', signs: ['foam'] }
  await page.goto(served.address)
  await page.evaluate(([key, text]) => localStorage.setItem(key, text), [
    `sumpbook.outbox.${id}`,
    JSON.stringify({ entry, label: 'Turning centre 2: foam', problem: null }),
  ] as const)
  await page.reload()
  await expect.poll(() => journalIds(served.address), { timeout: 20_000 }).toContain(id)
  expect(await page.evaluate((key) => localStorage.getItem(key), `sumpbook.outbox.${id}`)).toBe(null)
  await page.getByRole('button', { name: 'all saved' }).click()
  await page.getByText('Lately arrived: 1').click()
  await page.getByText('Turning centre 2: foam').waitFor()
})

test('a clock that is off is named, hinders nothing, and is noted beside the entry', async () => {
  const served = await servedExample()
  const profile = await (await phoneOf()).open()
  const page = await pageOf(profile)
  const aheadMs = 14 * 60_000
  await page.addInitScript((ms) => {
    const Right = Date
    window.Date = class extends Right {
      constructor(...parts: unknown[]) {
        if (parts.length === 0) super(Right.now() + ms)
        else super(...(parts as [number]))
      }
      static override now() {
        return Right.now() + ms
      }
    } as DateConstructor
  }, aheadMs)
  await page.goto(`${served.address}/round`)
  await page.locator('.stops a').first().click()
  await page.locator('label').filter({ hasText: 'at the mark' }).click()
  await page.getByRole('button', { name: 'Next', exact: true }).click()
  await page.getByText('clock off').last().waitFor()
  await expect
    .poll(async () => (await kept(page, 'outbox')).filter(({ taken }) => taken !== null).length, { timeout: 20_000 })
    .toBe(1)
  const [sent] = await kept(page, 'outbox')
  const { envelope } = (await (await fetch(`${served.address}/api/v1/entries/${sent!.entry!.id}`)).json()) as {
    envelope: { clockAheadMs: number }
  }
  expect(Math.abs(envelope.clockAheadMs - aheadMs)).toBeLessThan(5_000)
  await page.goto(served.address)
  await page.getByRole('button', { name: 'clock off' }).click()
  await page.getByText(/clock is 14 minutes fast/).waitFor()
  await lookAt(page, 'offline-clock')
})

test('a new version is announced, never loaded over a stop of the round, and comes when the person lets it in', async () => {
  const { address, deploy } = await servedFiles()
  const profile = await (await phoneOf()).open()
  const page = await pageOf(profile)
  await page.goto(address)
  await page.getByRole('heading', { name: 'Today', level: 1 }).waitFor()
  await isInstalled(page)
  await page.goto(`${address}/round`)
  await page.locator('.stops a').first().click()
  await page.locator('label').filter({ hasText: 'at the mark' }).click()
  deploy('second')
  await page.evaluate(async () => (await navigator.serviceWorker.ready).update())
  await page.waitForFunction(async () => (await navigator.serviceWorker.ready).waiting !== null)
  expect(await page.getByLabel('Level, litres').inputValue()).toBe('at the mark')
  expect(await page.locator('meta[name=deployed]').count()).toBe(0)
  await page.locator('.stop-head a').click()
  await page.getByText('A new version of the app is ready.').waitFor()
  await lookAt(page, 'offline-new-version')
  expect(await isWide(page)).toBe(false)
  await page.getByRole('button', { name: 'Load it' }).click()
  await page.waitForFunction(() => document.querySelector('meta[name=deployed]')?.getAttribute('content') === 'second')
  // And of itself, when the app is opened anew.
  deploy('third')
  await page.evaluate(async () => (await navigator.serviceWorker.ready).update())
  await page.waitForFunction(async () => (await navigator.serviceWorker.ready).waiting !== null)
  await page.goto(address)
  await page.waitForFunction(() => document.querySelector('meta[name=deployed]')?.getAttribute('content') === 'third')
})

/** The example shop by a server in this process, on a copy of the built app of which new versions can be put in place. */
async function servedFiles() {
  const folder = mkdtempSync(join(tmpdir(), 'sumpbook-deployed-'))
  const webRoot = join(folder, 'web')
  cpSync(fileURLToPath(new URL('../dist', import.meta.url)), webRoot, {
    recursive: true,
    // What is changed here has no compressed form.
    filter: (path) => !/\.(br|gz)$/.test(path),
  })
  cpSync(inject('exampleFolder'), folder, { recursive: true })
  const book = openBook(await openSqliteStore(join(folder, 'book.sqlite')), () => new Date())
  const app = await buildApp({ book, version: '0.0.0-test', webRoot })
  const address = (await app.listen({ host: '127.0.0.1', port: 0 })).replace('127.0.0.1', 'localhost')
  onTestFinished(async () => {
    await app.close()
    await book.close()
    rmSync(folder, { recursive: true, force: true })
  })
  const [page, worker] = ['index.html', 'sw.js'].map((file) => readFileSync(join(webRoot, file), 'utf8')) as [
    string,
    string,
  ]
  return {
    address,
    deploy(name: string) {
      writeFileSync(
        join(webRoot, 'index.html'),
        page.replace('<title>', `<meta name="deployed" content="${name}"><title>`),
      )
      const renamed = worker.replace(
        /(url:"index\.html",revision:")[0-9a-f]+|(revision:")[0-9a-f]+(",url:"index\.html")/,
        (found) => found.replace(/(revision:")[0-9a-f]+/, `$1${name}`),
      )
      if (renamed === worker) throw new Error('the worker names no index.html')
      writeFileSync(join(webRoot, 'sw.js'), renamed)
    },
  }
}

test('on plain http the open page keeps and sends, and says what https adds; who signs out leaves nothing behind', async () => {
  const served = await servedBook('--accounts')
  await expect.poll(() => served.said()).toMatch(/type this code/)
  const [, code] = /: ([0-9A-Z]{4}-[0-9A-Z]{4}-[0-9A-Z]{4})/.exec(served.said())!
  // A name that is no name of this machine: to a browser a plain-http address as any in a shop's network.
  const profile = await (await phoneOf('--host-resolver-rules=MAP book.example 127.0.0.1')).open()
  const address = served.address.replace(/localhost|127\.0\.0\.1/, 'book.example')
  const [page, other] = [await pageOf(profile), await pageOf(profile)]
  await page.goto(address)
  expect(await page.evaluate(() => [isSecureContext, 'serviceWorker' in navigator, 'locks' in navigator])).toEqual([
    false,
    false,
    false,
  ])
  const form = page.getByRole('form', { name: 'The first owner' })
  await form.getByLabel('Code').fill(code!)
  await form.getByLabel(/Your name/).fill('Ada Owner')
  await form.getByLabel(/sign in with/).fill('ada')
  await form.getByLabel(/Password/).fill('slow grey heron 7')
  await form.getByRole('button', { name: 'Own this book' }).click()
  await page.getByRole('button', { name: 'Look round the example shop' }).click()
  await page.getByRole('heading', { name: 'Today', level: 1 }).waitFor()
  await other.goto(address)
  await other.getByRole('heading', { name: 'Today', level: 1 }).waitFor()
  const journal = () =>
    page.evaluate(async () =>
      ((await (await fetch('/api/v1/entries?limit=500')).json()) as { entries: { id: string }[] }).entries.map(
        ({ id }) => id,
      ),
    )
  for (const one of [page, other]) {
    await one.getByRole('link', { name: 'Round', exact: true }).click()
    await one.locator('.stops a').first().waitFor()
  }
  await profile.context.setOffline(true)
  for (const one of [page, other]) {
    await one
      .locator('.stops a')
      .nth(one === page ? 0 : 4)
      .click()
    await walkStop(one)
  }
  const written = await waitingIds(page)
  expect(written.length).toBeGreaterThanOrEqual(4)
  await page.locator('.state button').last().click()
  await page.getByText('What this browser does not promise').click()
  await page.getByText(/Reached by plain http/).waitFor()
  await lookAt(page, 'offline-plain-http')
  await profile.context.setOffline(false)
  await expect.poll(() => waitingIds(page), { timeout: 30_000 }).toEqual([])
  const ids = await journal()
  for (const id of written) expect(ids.filter((one) => one === id)).toEqual([id])

  expect((await kept(page, 'answers')).length).toBeGreaterThan(2)
  await other.close()
  await page.goto(`${address}/shop/account`)
  await page.getByRole('button', { name: 'Sign out' }).click()
  const door = page.getByRole('form', { name: 'Sign in' })
  await door.waitFor()
  expect(await kept(page, 'answers')).toEqual([])
  // The same person again, in the same open page.
  await door.getByLabel(/Name or mail/).fill('ada')
  await door.getByLabel('Password').fill('slow grey heron 7')
  await door.getByRole('button', { name: 'Sign in' }).click()
  await page.getByRole('heading', { name: 'Today', level: 1 }).waitFor()
  await expect.poll(async () => (await kept(page, 'answers')).length, { timeout: 60_000 }).toBeGreaterThan(1)
})
