/** The journal looked through by its address, a sump's page in its order, and what is printed, in a real browser on a real server. */
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { desk, fileBrowser, fileExample, isWide, lookAt, openPage, phone, screensOf } from './on-a-screen.ts'

const browser = fileBrowser()
const served = fileExample()

const openAt = (viewport: { width: number; height: number }, place: string) =>
  openPage(browser(), served().address + place, { viewport })

const askBook = async (path: string) => (await fetch(`${served().address}/api/v1${path}`)).json()

/** How many pages a PDF has and how large they are, in points of 1/72 inch (ISO 32000-1, 7.7.3 and 14.11.2). */
async function printed(page: Page, format: 'A4' | 'Letter' = 'A4'): Promise<{ pages: number; sizes: string[] }> {
  const pdf = (await page.pdf({ preferCSSPageSize: true, format })).toString('latin1')
  const sizes = [...pdf.matchAll(/\/MediaBox ?\[0 0 ([\d.]+) ([\d.]+)\]/g)].map(([, width, height]) =>
    paperOf(Number(width), Number(height)),
  )
  return { pages: Number(/\/Count (\d+)/.exec(pdf)?.[1]), sizes: [...new Set(sizes)] }
}
/** The page's own rule names this paper: a choice is drawn a moment after it is made. */
const onPaper = (page: Page, paper: string) =>
  page.waitForFunction(
    (name) =>
      document.adoptedStyleSheets.some(({ cssRules }) =>
        cssRules[0]?.cssText.toLowerCase().includes(name.toLowerCase()),
      ),
    paper,
  )

/** Points across and down: ISO 216 has 210 × 297 mm, ANSI A 8.5 × 11 inches. Printers' drivers round to whole pixels. */
const papers = {
  A4: [595.28, 841.89],
  letter: [612, 792],
  'A4 on its side': [841.89, 595.28],
  'letter on its side': [792, 612],
} as const
const paperOf = (width: number, height: number): string =>
  Object.entries(papers).find(([, [x, y]]) => Math.abs(x - width) < 1.5 && Math.abs(y - height) < 1.5)?.[0] ??
  `${width} × ${height}`

test('what is looked for stands in the address, comes back with it, and goes away with it', async () => {
  const page = await openAt(phone, '/journal')
  await page.getByText('Look for something').click()
  await page.getByLabel('What').selectOption({ label: 'Pours and fresh charges' })
  await page.waitForURL(/what=pours/)
  await page.getByText('Looked for: pours and fresh charges.').waitFor()
  await page.locator('.journal-day li').first().waitFor()
  await page.getByLabel('Words, notes included').fill('zebra')
  await page.getByRole('button', { name: 'Look it up' }).click()
  await page.getByText('Nothing of that is in the journal.').waitFor()
  await page.getByText('Looked for: pours and fresh charges, with “zebra”.').waitFor()
  expect(await isWide(page)).toBe(false)
  await lookAt(page, 'journal-none-phone', 'whole')
  await page.goBack()
  await page.getByText('Looked for: pours and fresh charges.').waitFor()
  await page.locator('.journal-day li').first().waitFor()
  const kinds = (await askBook('/entries?kind=addition,charge&limit=5')).entries.map(({ id }: { id: string }) => id)
  expect(await page.locator('.journal-day a.time').first().getAttribute('href')).toBe(`/journal/${kinds[0]}`)
})

test('an address sent by somebody else opens on what they looked for, and its table holds the same', async () => {
  const { sumps } = await askBook('/sumps')
  const { sump, name } = sumps[0] as { sump: string; name: string }
  const page = await openAt(desk, `/journal?sump=${sump}&what=readings`)
  await page.getByText(`Looked for: readings and looks, of ${name}.`).waitFor()
  expect(await page.getByLabel('Sump').inputValue()).toBe(sump)
  const link = page.getByRole('link', { name: 'Table (CSV)' })
  const table = await (await fetch(new URL((await link.getAttribute('href'))!, served().address))).text()
  const machines = new Set(
    table
      .trim()
      .split('\r\n')
      .slice(1)
      .map((line) => line.split(',')[1]),
  )
  expect([...machines]).toEqual([name])
  await lookAt(page, 'journal-desk')
})

test('an entry is set aside from the journal, with its reason beside it', async () => {
  const page = await openAt(phone, '/journal?what=readings')
  await page.getByRole('button', { name: 'Set an entry aside' }).click()
  const first = page.locator('.journal-day li').first()
  await first.getByRole('button', { name: /^Set aside/ }).click()
  await first.getByRole('button', { name: 'Set it aside' }).click()
  await first.getByText(/expected a reason/).waitFor()
  await first.getByLabel(/^Why is it set aside/).fill('wrong machine')
  await first.getByRole('button', { name: 'Set it aside' }).click()
  await page.locator('.journal-day li').first().getByText('set aside: wrong machine').waitFor()
})

test('a sump’s page is read in the order one asks, with jumps to its parts', async () => {
  const page = await openAt(phone, '/sumps/tc2')
  await page.locator('.fan-chart').nth(1).waitFor()
  await page.getByRole('heading', { name: 'Additives' }).waitFor()
  await page.locator('#limits').waitFor()
  const parts = await page.locator('.sump-page h2[id]').evaluateAll((all) => all.map(({ id }) => id))
  const order = ['concentration', 'minerals', 'tests', 'limits', 'additives', 'cost', 'sump-journal', 'known']
  expect(parts.filter((id) => order.includes(id))).toEqual(order)
  expect(await isWide(page)).toBe(false)
  await page.getByRole('navigation', { name: 'On this page' }).getByText('Cost').click()
  await page.waitForFunction(() => Math.abs(document.getElementById('cost')!.getBoundingClientRect().top) < 200)
  await page.getByRole('link', { name: 'Look through its journal' }).click()
  await page.getByText(/Looked for: of /).waitFor()
  expect(new URL(page.url()).search).toBe('?sump=tc2')
})

test('a round sheet has a row a sump and fits few pages of either paper, on its side', async () => {
  const page = await openAt(phone, '/round')
  await page.getByRole('link', { name: 'Round sheet on paper' }).click()
  const rows = page.locator('.round-sheet tbody tr')
  await rows.first().waitFor()
  const { sumps } = await askBook('/sumps')
  expect(await rows.locator('th').evaluateAll((all) => all.map((one) => one.firstChild!.textContent))).toEqual(
    sumps.map(({ name }: { name: string }) => name),
  )
  expect(await isWide(page)).toBe(false)
  for (const paper of ['A4', 'letter'] as const) {
    await page.getByLabel('Paper').selectOption(paper)
    await onPaper(page, paper)
    const { pages, sizes } = await printed(page)
    expect(sizes).toEqual([`${paper} on its side`])
    // Twelve rows of 13 mm are 156 mm; A4 on its side has 186 within its margins, Letter 192.
    expect(pages).toBeLessThanOrEqual(2)
  }
  await page.emulateMedia({ media: 'print' })
  expect(await page.getByRole('button', { name: 'Print' }).isVisible()).toBe(false)
  expect(await page.getByRole('navigation').filter({ visible: true }).count()).toBe(0)
  await page.setViewportSize({ width: 1032, height: 720 })
  await lookAt(page, 'round-sheet-print', 'whole')
})

test('labels come out on the paper they are bought on, one sheet for as many as it holds', async () => {
  const page = await openAt(desk, '/shop/labels')
  await page.locator('.label').first().waitFor()
  const count = (await askBook('/sumps')).sumps.length
  expect(await printed(page)).toEqual({ pages: Math.ceil(count / 8), sizes: ['A4'] })
  await page.getByLabel('Sheet', { exact: true }).selectOption('letter-2x5')
  await onPaper(page, 'letter')
  expect(await printed(page)).toEqual({ pages: Math.ceil(count / 10), sizes: ['letter'] })
  // Served on loopback, where no phone comes: the page says so, and takes the address that phones use.
  const address = page.getByLabel('Address that phones use')
  const alone = page.getByRole('alert').getByText(/^No phone comes to/)
  await alone.waitFor()
  const code = () => page.locator('.label .qr').first().innerHTML()
  const before = await code()
  await address.fill('192.168.0.9:7340')
  await expect.poll(() => alone.count()).toBe(0)
  expect(await code()).not.toBe(before)
  await address.fill('http://192.168.0.9:7340/round')
  await page
    .getByRole('alert')
    .getByText(/expected the address of the book without a page/)
    .waitFor()
  expect(await page.locator('.label').count()).toBe(0)
})

test.each(screensOf('desk'))(
  'from a %s, a month and a job’s sheet are printed without anything to press, in black on white where the screen is dark',
  async (name, screen) => {
    const month = await openAt(screen, '/stock/month')
    await month.getByRole('heading', { name: 'Cost by part' }).waitFor()
    // Not every column stands on a phone; on paper they all do.
    await month.getByText(/~\d/).first().waitFor({ state: 'attached' })
    for (const [format, size] of [
      ['A4', 'A4'],
      ['Letter', 'letter'],
    ] as const) {
      const report = await printed(month, format)
      expect(report.sizes).toEqual([size])
      expect(report.pages).toBeGreaterThan(0)
      expect(report.pages).toBeLessThanOrEqual(3)
    }

    const { open, planned, done } = (await askBook('/jobs')) as Record<string, { id: string }[]>
    const [job] = [...open!, ...planned!, ...done!]
    const sheet = await openAt(screen, `/cleanouts/sheet/${job!.id}`)
    await sheet.locator('.sheet-step').first().waitFor()
    const steps = await printed(sheet)
    expect(steps.pages).toBeGreaterThan(0)
    // What was signed days ago is not said to be of today.
    expect(await sheet.locator('.signed').first().textContent()).toMatch(/, \w{3} \d+ \w{3} \d\d:\d\d/)
    expect(steps.pages).toBeLessThanOrEqual(4)
    await sheet.emulateMedia({ media: 'print', colorScheme: 'dark' })
    for (const colour of ['--paper', '--fluid-wash', '--do-wash', '--doubt-wash'])
      expect(
        await sheet.evaluate((name) => getComputedStyle(document.documentElement).getPropertyValue(name), colour),
      ).toMatch(/^#(fff|e)/)
    expect(await sheet.getByRole('button').filter({ visible: true }).count()).toBe(0)
    expect(await sheet.getByRole('navigation').filter({ visible: true }).count()).toBe(0)
    await sheet.setViewportSize({ width: 700, height: 1000 })
    await lookAt(sheet, `job-print-${name}`, 'whole')
  },
)

test('a first day that is yet to come is said at its field, in the page’s own words', async () => {
  const page = await openAt(phone, '/journal')
  await page.getByText('Look for something').click()
  await page.getByLabel('From', { exact: true }).fill('2999-01-01')
  await page.getByRole('alert').getByText('Found 2999-01-01; expected a day up to today.').waitFor()
  await page.getByRole('button', { name: 'Look it up' }).click()
  expect(new URL(page.url()).search).toBe('')
})
