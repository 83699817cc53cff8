/** What a month cost, the shop's own figures, and the month on paper, in a real browser on a real server. */
import { expect, test } from 'vitest'
import { desk, fileBrowser, fileExample, isWide, lookAt, openPage, phone } from './on-a-screen.ts'

const browser = fileBrowser()
const served = fileExample()

const openAt = (viewport: { width: number; height: number }, place: string) =>
  openPage(browser(), served().address + place, { viewport })

test('a month says first what it cost; a figure of the shop’s own counts at once, and only from its day on', async () => {
  const page = await openAt(phone, '/stock/cost')
  const lede = page.locator('p.lede')
  await lede.getByText(/ cost €[\d,]+: .* concentrate/).waitFor()
  await page.getByRole('heading', { name: 'A steadier hand' }).waitFor()
  expect(await isWide(page)).toBe(false)
  await lookAt(page, 'cost-phone', 'whole')
  const before = await lede.textContent()

  // Twice the wage, from today on: what was before keeps its own.
  const wage = page.getByLabel('Work, EUR an hour')
  expect(await wage.inputValue()).toBe('42')
  await wage.fill('84')
  await page.getByRole('button', { name: 'Keep these figures' }).click()
  await page.getByText('Written down.').waitFor()
  expect(await lede.textContent()).toBe(before)

  // A first figure without a day counts for what was before as well.
  await page.getByLabel('A day under the band, EUR').fill('7')
  await page.getByRole('button', { name: 'Keep these figures' }).click()
  await page.getByText('Written down.').waitFor()
  const cost = await (await fetch(`${served().address}/api/v1/cost?from=2026-01-01&to=2026-01-31`)).json()
  expect(cost.assumptions).toContainEqual({ figure: 'leanPerDay', value: 7 })
  expect(cost.assumptions).toContainEqual({ figure: 'labourPerHour', value: 42 })
})

test('a figure that is none is refused at its field, and nothing is kept', async () => {
  const page = await openAt(desk, '/stock/cost')
  const wage = page.getByLabel('A machine that stands, EUR an hour')
  await wage.fill('-5')
  await page.getByText(/at least 0/).waitFor()
  await page.getByRole('button', { name: 'Keep these figures' }).click()
  expect(await page.getByText('Written down.').count()).toBe(0)
})

test('the month is printed on few pages, with the chain’s head at its foot and nothing to press on it', async () => {
  const page = await openAt(desk, '/stock/month')
  await page.getByRole('heading', { name: 'Cost by part' }).waitFor()
  await page.getByText(/~\d/).first().waitFor()
  const { hash } = (await (await fetch(`${served().address}/api/v1/book`)).json()).head
  expect(await page.locator('.month-report footer code').textContent()).toBe(hash)
  for (const format of ['A4', 'Letter']) {
    const pdf = (await page.pdf({ format })).toString('latin1')
    const pages = Number(/\/Count (\d+)/.exec(pdf)?.[1])
    expect(pages).toBeGreaterThan(0)
    expect(pages).toBeLessThanOrEqual(3)
  }
  await page.emulateMedia({ media: 'print' })
  for (const tool of ['Earlier', 'Print'])
    expect(await page.getByRole('button', { name: tool }).isVisible()).toBe(false)
  expect(await page.getByRole('navigation').filter({ visible: true }).count()).toBe(0)
  await page.setViewportSize({ width: 704, height: 1000 })
  expect(await isWide(page)).toBe(false)
  await lookAt(page, 'month-print', 'whole')
})
