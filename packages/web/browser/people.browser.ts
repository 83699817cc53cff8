/** People, in a real browser on a real server that asks for accounts: from the first run to what an operator may not do. */
import { createHmac } from 'node:crypto'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, onTestFinished, test, vi } from 'vitest'
import { fileBrowser, isWide, lookAt, openPage } from './on-a-screen.ts'
import { type ServedBook, serveBook } from './served-book.ts'
import { confirmWhereAsked } from './walk-stop.ts'

const password = 'slow grey heron 7'

const browser = fileBrowser()

/** Answers that say who may not, or what will not do, are what some of these tests are about, and so is a book out of reach. */
const openPhone = (served: ServedBook, place = '/') =>
  openPage(browser(), served.address + place, { forgive: /status of (40[13]|422)|ERR_FAILED/ })

/** An empty book that asks for accounts, and the code by which one owns it. */
async function serveWithAccounts(): Promise<{ served: ServedBook; code: string }> {
  const served = await serveBook('--accounts')
  await vi.waitFor(() => expect(served.said()).toMatch(/type this code/))
  const [, code] = /: ([0-9A-Z]{4}-[0-9A-Z]{4}-[0-9A-Z]{4})/.exec(served.said())!
  return { served, code: code! }
}

/** The example shop that Ada owns, for those tests that leave no trace another one minds. */
let owned: ServedBook
beforeAll(async () => {
  const { served, code } = await serveWithAccounts()
  owned = served
  const first = { code, name: 'Ada Owner', login: 'ada', password }
  const made = await post(served, '/session/first-run', first)
  expect(made.status).toBe(201)
  const [cookie] = made.headers.getSetCookie().map((one) => one.split(';')[0]!)
  expect((await post(served, '/demo', {}, { cookie: cookie! })).status).toBe(201)
})
afterAll(() => owned.end())

const post = ({ address }: ServedBook, path: string, body: unknown, headers: Record<string, string> = {}) =>
  fetch(`${address}/api/v1${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', origin: address, ...headers },
    body: JSON.stringify(body),
  })

/** A phone on which Ada is signed in, at a place of her book. */
async function adasPhone(place = '/'): Promise<Page> {
  const page = await openPhone(owned, '/livez')
  const asked = { data: { login: 'ada', password }, headers: { origin: owned.address } }
  expect((await page.context().request.post(`${owned.address}/api/v1/session`, asked)).status()).toBe(200)
  await page.goto(owned.address + place)
  return page
}

async function ownBook(page: Page, code: string): Promise<void> {
  const form = page.getByRole('form', { name: 'The first owner' })
  await form.getByLabel('Code').fill(code)
  await form.getByLabel(/Your name/).fill('Ada Owner')
  await form.getByLabel(/sign in with/).fill('ada')
  await form.getByLabel(/Password/).fill(password)
  expect(await page.evaluate(() => document.documentElement.scrollWidth > innerWidth)).toBe(false)
  await lookAt(page, 'first-run', 'whole')
  await form.getByRole('button', { name: 'Own this book' }).click()
}

/** A stop of the round: level, look, smell, oil, refractometer, and poured as it was reckoned. */
async function topUp(page: Page, served: ServedBook): Promise<void> {
  await page.goto(`${served.address}/round/tc2`)
  await page.getByRole('heading', { name: 'Turning centre 2' }).waitFor()
  for (const key of ['1', '3', '0']) await page.getByRole('button', { name: key, exact: true }).click()
  await page.getByRole('button', { name: 'On to look, smell, oil' }).click()
  for (const sense of ['Look', 'Smell', 'Oil']) {
    await page.getByRole('group', { name: sense }).locator('label').first().click()
  }
  // The tests that its guidance has days for come first, where any is due.
  await page.getByLabel('Refractometer, °Brix').click()
  for (const key of ['3', '.', '5']) await page.getByRole('button', { name: key, exact: true }).click()
  await confirmWhereAsked(page, '3.5')
  await page.getByRole('button', { name: 'Poured as written · next' }).click()
}

test('first run, an operator invited, a reading in their name, and no import for them', async () => {
  const { served, code: firstCode } = await serveWithAccounts()
  onTestFinished(() => served.end())
  const owner = await openPhone(served)
  await ownBook(owner, firstCode)
  await owner.getByRole('button', { name: 'Look round the example shop' }).click()
  await owner.getByRole('heading', { name: 'Today', level: 1 }).waitFor()
  await owner.getByRole('link', { name: 'Ada Owner' }).waitFor()

  await owner.goto(`${served.address}/shop/people`)
  const invite = owner.getByRole('form', { name: 'Invite somebody' })
  await invite.getByLabel(/Name, as it stands/).fill('Ben Operator')
  await invite.getByRole('button', { name: 'Make a code' }).click()
  const code = (await owner.locator('.code-shown').textContent())!
  expect(code).toMatch(/^[0-9A-Z]{4}-[0-9A-Z]{4}-[0-9A-Z]{4}$/)
  await lookAt(owner, 'people', 'whole')
  expect(await owner.evaluate(() => document.documentElement.scrollWidth > innerWidth)).toBe(false)

  const ben = await openPhone(served, '/join')
  const join = ben.getByRole('form', { name: 'Come in by a code' })
  await join.getByLabel('Code').fill(code)
  await join.getByLabel(/sign in with/).fill('ben')
  await join.getByLabel(/Password/).fill(password)
  await join.getByRole('button', { name: 'Go in' }).click()
  await ben.getByRole('link', { name: 'Ben Operator' }).waitFor()
  await topUp(ben, served)
  await ben.getByText('all saved').last().waitFor()

  await owner.goto(`${served.address}/journal`)
  const first = owner.locator('.journal-day li').filter({ hasText: '3.5 °Brix' }).first()
  await first.getByText('Ben Operator').waitFor()
  await first.locator('a.time').click()
  await owner.getByText('Ben Operator').waitFor()
  await owner.getByText('Reached the book').waitFor()
  await lookAt(owner, 'entry', 'whole')

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
  const page = await adasPhone('/shop/account')
  await page.getByRole('heading', { name: 'Ada Owner' }).waitFor()
  await lookAt(page, 'account', 'whole')
  // Beside who is signed in there is room on a phone for whose book it is.
  await page.locator('.masthead .shop:visible').filter({ hasText: 'Example shop' }).waitFor()
  expect(await page.evaluate(() => document.documentElement.scrollWidth > innerWidth)).toBe(false)

  // What is only on this phone is said before it is left behind.
  await page.route('**/api/v1/entries', (route) => route.abort())
  await topUp(page, owned)
  await page.goto(`${owned.address}/shop/account`)
  await page.getByRole('button', { name: 'Sign out' }).click()
  await page
    .getByRole('alert')
    .getByText(/only on this device and not in the book yet/)
    .waitFor()
  expect(await isWide(page)).toBe(false)
  await lookAt(page, 'sign-out-waiting')
  await page.getByRole('alert').getByRole('button', { name: 'Stay signed in' }).click()
  await page.unroute('**/api/v1/entries')
  await page.reload()
  await page.getByText('all saved').last().waitFor()

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
  const page = await adasPhone()
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
  expect(await call('PUT', '/me/pin', { pin: '2468', password })).toBe(204)
  expect(await call('POST', '/devices', { name: 'Tablet', here: true })).toBe(201)
  expect(await page.evaluate(() => fetch('/api/v1/session', { method: 'DELETE' }).then(({ status }) => status))).toBe(
    204,
  )
  await page.goto(owned.address)
  await page.getByRole('link', { name: 'Who is here?' }).click()
  await page.getByRole('button', { name: 'Ada Owner' }).click()
  await page.getByRole('textbox', { name: 'PIN of Ada Owner' }).fill('2468')
  await lookAt(page, 'switch', 'whole')
  await page.getByRole('button', { name: 'I am Ada Owner' }).click()
  await page.getByRole('link', { name: 'Ada Owner' }).waitFor()
})

/** A one-time code by RFC 6238 as every app makes it: SHA-1, six digits, thirty seconds. */
function oneTimeCode(secret: string, now = Date.now()): string {
  const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ234567'
  const bits = [...secret].map((letter) => letters.indexOf(letter).toString(2).padStart(5, '0')).join('')
  const key = Buffer.from((bits.match(/.{8}/g) ?? []).map((byte) => Number.parseInt(byte, 2)))
  const count = Buffer.alloc(8)
  count.writeBigUInt64BE(BigInt(Math.floor(now / 30_000)))
  const mac = createHmac('sha1', key).update(count).digest()
  const from = mac.at(-1)! & 15
  return `${(mac.readUInt32BE(from) & 0x7fffffff) % 1_000_000}`.padStart(6, '0')
}

test('the code of the test is that of RFC 6238, appendix B', () => {
  // Its secret is the ASCII of 12345678901234567890; its codes have eight digits, of which the last six are these.
  const secret = 'GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ'
  expect(oneTimeCode(secret, 59_000)).toBe('287082')
  expect(oneTimeCode(secret, 1_111_111_109_000)).toBe('081804')
})

/** The page at a phone's and a desk's width, nothing sticking out sideways. */
async function show(page: Page, name: string): Promise<void> {
  for (const width of [1200, 360]) {
    await page.setViewportSize({ width, height: 740 })
    expect(await page.evaluate(() => document.documentElement.scrollWidth > innerWidth)).toBe(false)
    await lookAt(page, `${name}-${width}`, 'whole')
  }
}

test('one-time codes are turned on with the first of them, asked for at the door, and turned off', async () => {
  const page = await adasPhone('/shop/account')
  const codes = page.getByRole('region', { name: 'One-time codes' })
  await codes.getByLabel('Your password').fill(password)
  await codes.getByRole('button', { name: 'Begin' }).click()
  const confirm = page.getByRole('form', { name: 'The first one-time code' })
  const secret = (await confirm.locator('.code-shown').first().textContent())!.replaceAll(' ', '')
  expect(await confirm.getByRole('listitem').count()).toBe(10)
  const spare = (await confirm.getByRole('listitem').first().textContent())!
  await show(page, 'second-factor-begun')
  await confirm.getByLabel(/six digits/).fill(oneTimeCode(secret))
  await confirm.getByRole('button', { name: 'Turn them on' }).click()
  await codes.getByText('They are on').waitFor()
  await show(page, 'second-factor-on')

  const signIn = async (code: string) => {
    await page.getByRole('button', { name: 'Sign out' }).click()
    const door = page.getByRole('form', { name: 'Sign in' })
    await door.getByLabel(/Name or mail/).fill('ada')
    await door.getByLabel('Password').fill(password)
    await door.getByRole('button', { name: 'Sign in' }).click()
    const second = page.getByRole('form', { name: 'One-time code' })
    await second.getByLabel(/Six digits/).fill('000000')
    await second.getByRole('button', { name: 'Go in' }).click()
    await second.getByText(/not right/).waitFor()
    await show(page, 'second-factor-asked')
    await second.getByLabel(/Six digits/).fill(code)
    await second.getByRole('button', { name: 'Go in' }).click()
    await page.getByRole('link', { name: 'Ada Owner' }).waitFor()
    await page.goto(`${owned.address}/shop/account`)
  }
  await signIn(spare)
  await signIn(oneTimeCode(secret))
  await codes.getByLabel('Your password').fill(password)
  await codes.getByRole('button', { name: 'Turn them off' }).click()
  await codes.getByRole('button', { name: 'Begin' }).waitFor()
})

test('a token is shown once, opens the book to a program, and no more once it is ended', async () => {
  const page = await adasPhone('/shop/account')
  const form = page.getByRole('form', { name: 'A token for a program' })
  await form.getByLabel('What it is for').fill('Wall board')
  await form.getByRole('button', { name: 'Make a token' }).click()
  const token = (await form.locator('.code-shown').textContent())!
  expect(token).toMatch(/^sumpbook_/)
  await page.getByRole('button', { name: 'End Wall board' }).waitFor()
  await show(page, 'token-made')
  const statusOf = async () =>
    (await fetch(`${owned.address}/api/v1/sumps`, { headers: { authorization: `Bearer ${token}` } })).status
  expect(await statusOf()).toBe(200)
  await page.reload()
  await page.getByRole('button', { name: 'End Wall board' }).waitFor()
  expect(await page.getByText(token).count()).toBe(0)
  await page.getByRole('button', { name: 'End Wall board' }).click()
  await page.getByRole('button', { name: 'End Wall board' }).waitFor({ state: 'detached' })
  expect(await statusOf()).toBe(401)
})

test('what is held for a keeper is let in or set aside', async () => {
  const page = await adasPhone('/shop/people')
  const invite = page.getByRole('form', { name: 'Invite somebody' })
  await invite.getByLabel(/Name, as it stands/).fill('Ben Operator')
  await invite.getByRole('button', { name: 'Make a code' }).click()
  const code = (await page.locator('.code-shown').textContent())!
  const ben = await openPhone(owned, '/join')
  const join = ben.getByRole('form', { name: 'Come in by a code' })
  await join.getByLabel('Code').fill(code)
  await join.getByLabel(/sign in with/).fill('ben')
  await join.getByLabel(/Password/).fill('Password2024!')
  await join.getByRole('button', { name: 'Go in' }).click()
  await join.getByText(/a password that many people use/).waitFor()
  await show(ben, 'password-many-use')
  await join.getByLabel(/Password/).fill(password)
  await join.getByRole('button', { name: 'Go in' }).click()
  await ben.getByRole('link', { name: 'Ben Operator' }).waitFor()

  // In the name of somebody who is not signed in on this phone: kept, and counted nowhere until a keeper has looked.
  const held = await ben.evaluate(async () => {
    const { people } = await (await fetch('/api/v1/people')).json()
    const ada = people.find(({ name }: { name: string }) => name === 'Ada Owner').id
    const reasons: string[] = []
    for (const [minutes, brix] of [
      [2, 3.7],
      [1, 3.9],
    ] as const) {
      const at = new Date(Date.now() - minutes * 60_000).toISOString()
      const entry = { id: crypto.randomUUID(), at, kind: 'reading', sump: 'tc2', brix, by: ada }
      const answer = await fetch(`/api/v1/entries/${entry.id}`, {
        method: 'PUT',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(entry),
      })
      reasons.push((await answer.json()).quarantine)
    }
    return reasons
  })
  const why = 'it is written in the name of Ada Owner, and Ben Operator sent it'
  expect(held).toEqual([why, why])
  await page.goto(`${owned.address}/journal/held`)
  const line = (text: string) => page.getByRole('article').filter({ hasText: text })
  await line('Turning centre 2: 3.7 °Brix').waitFor()
  await show(page, 'held')
  await line('3.7 °Brix').getByRole('button', { name: 'Let it in' }).click()
  await line('3.7 °Brix').waitFor({ state: 'detached' })
  await line('3.9 °Brix').getByRole('button', { name: 'Set it aside' }).click()
  await line('3.9 °Brix').waitFor({ state: 'detached' })
  await page.getByText('None.').waitFor()
  await page.goto(`${owned.address}/journal`)
  await page.locator('.journal-day li').filter({ hasText: '3.7 °Brix' }).first().waitFor()
  expect(await page.locator('.journal-day li').filter({ hasText: '3.9 °Brix' }).count()).toBe(0)
})

test('the round is written in the name of who is signed in', async () => {
  const page = await adasPhone('/round')
  await page.getByText('Written as Ada Owner').waitFor()
  expect(await page.getByLabel(/initials/).count()).toBe(0)
  await show(page, 'round-signed-in')
})

test('the Shop page says how old the backup is and tries whether it can be restored', async () => {
  const page = await adasPhone('/shop')
  const part = page.getByRole('region', { name: 'Backup' })
  await part.getByRole('button', { name: 'Try whether it can be restored' }).click()
  await part.getByText(/Restored, walked and compared .* it holds/).waitFor()
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    part.getByRole('link', { name: 'Fetch a fresh backup' }).click(),
  ])
  expect(download.suggestedFilename()).toMatch(/\.tar$/)
  await show(page, 'shop-backup')
})
