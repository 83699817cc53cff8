/** The first day of a new user, in a real browser on a real server. */
import { expect, test } from 'vitest'
import { desk, fileBrowser, isWide, openPage, phone, servedBook, showInDocs } from './on-a-screen.ts'
import { confirmWhereAsked } from './walk-stop.ts'

const browser = fileBrowser()

/** One of the tests restarts the server under an open page, which asks for things by itself. */
async function openOn(viewport: { width: number; height: number }) {
  const page = await openPage(browser(), undefined, {
    viewport,
    forgive: /ERR_(CONNECTION_(REFUSED|RESET)|INCOMPLETE_CHUNKED_ENCODING)/,
  })
  return { page, context: page.context() }
}

test('the example shop opens, a round takes a reading, Today changes, and it is all there after a restart', {
  timeout: 120_000,
}, async () => {
  const served = await servedBook()
  const { page } = await openOn(desk)
  const { lede: nothingYet } = (await (await fetch(`${served.address}/api/v1/today`)).json()) as { lede: string }
  await page.goto(served.address)
  const example = page.getByRole('button', { name: 'Look round the example shop' })
  await example.waitFor()
  await page.evaluate(keepLedes)
  await example.click()
  await page.getByRole('heading', { name: 'Today', level: 1 }).waitFor()
  await page.getByRole('heading', { name: 'Turning centre 2', exact: true }).waitFor()
  const ledes = await page.evaluate(() => (window as unknown as { ledes: string[] }).ledes)
  expect(ledes.length).toBeGreaterThan(0)
  // What the empty book answered when the app was opened stood nowhere, not even for a moment.
  expect(ledes).not.toContain(nothingYet)
  await showInDocs(page, 'today')

  const { page: round } = await openOn(phone)
  await round.goto(`${served.address}/round`)
  await round.getByRole('link', { name: /Turning centre 2/ }).click()
  await round.getByRole('heading', { name: 'Turning centre 2' }).waitFor()
  for (const key of ['1', '3', '0']) await round.getByRole('button', { name: key, exact: true }).click()
  await round.getByRole('button', { name: 'On to look, smell, oil' }).click()
  for (const sense of ['Look', 'Smell', 'Oil']) {
    await round.getByRole('group', { name: sense }).locator('label').first().click()
  }
  // The tests that its guidance has days for come first, where any is due.
  await round.getByLabel('Refractometer, °Brix').click()
  for (const key of ['3', '.', '5']) await round.getByRole('button', { name: key, exact: true }).click()
  await confirmWhereAsked(round, '3.5')
  // 3.5 °Brix at a factor of 1 are about 3.5 % in 130 of 180 L: what is missing to the mark, at the mixer's strongest.
  await round.getByText(/^Add [\d.]+\sL at 15\s%$/).waitFor()
  expect(await isWide(round)).toBe(false)
  await showInDocs(round, 'round')
  await round.getByRole('button', { name: 'Poured as written · next' }).click()
  await round.getByRole('heading', { name: 'Sliding-head lathe 3' }).waitFor()
  await round.getByText('all saved').last().waitFor()

  await page.reload()
  const inOrder = page.getByRole('region', { name: 'In order' })
  await inOrder.getByText('Turning centre 2').waitFor()

  await served.restart()
  await page.reload()
  await page.getByRole('region', { name: 'In order' }).getByText('Turning centre 2').waitFor()
  await page.goto(`${served.address}/sumps/tc2`)
  await page
    .getByText(/^Added [\d.]+\sL at 1[45]\.?\d?\s%/)
    .first()
    .waitFor()
  await page.getByText('today', { exact: true }).first().waitFor()
  await showInDocs(page, 'sump', 'whole')
})

/** In the page: each opening of Today that is shown from now on. */
function keepLedes(): void {
  const ledes: string[] = []
  Object.assign(window, { ledes })
  new MutationObserver(() => {
    const shown = document.querySelector('.today .lede')?.textContent
    if (shown !== undefined && shown !== ledes.at(-1)) ledes.push(shown)
  }).observe(document.body, { childList: true, subtree: true, characterData: true })
}

test('from an empty book to the first recipe of one’s own shop', async () => {
  const served = await servedBook()
  const { page } = await openOn(phone)
  await page.goto(served.address)
  await page.getByRole('link', { name: 'Begin with my shop' }).click()
  const form = page.getByRole('form', { name: 'Begin with my shop' })
  await form.waitFor()
  expect(await isWide(page)).toBe(false)
  await showInDocs(page, 'begin-shop', 'whole')
  const fill = (name: string, value: string, nth = 0) => form.getByLabel(name, { exact: false }).nth(nth).fill(value)
  await fill('Name of the shop', 'Works of our own')
  await fill('Name of the fluid', 'Semi 1')
  await fill('Brix factor', '1,6')
  await fill('Band from', '6')
  await fill('Target', '8')
  await fill('Band to', '10')
  await fill('Name of the machine or sump', 'Mill 1')
  await fill('Full mark', '200')
  await form.getByRole('button').last().click()
  await page.getByRole('heading', { name: 'Mill 1', level: 1 }).waitFor()
  // 3,5 °Brix × 1.6 = 5.6 % in 160 of 200 L hold 8.96 L; 7.04 L more in 40 L are 17.6 %.
  await page.getByLabel('Level, litres').fill('160')
  await page.getByLabel('Refractometer, °Brix').fill('3,5')
  await page.getByText('Add 40 L at 17.6 %').waitFor()
})

/** A day so many days ago, as a German sheet writes it. */
const dayOf = (ago: number) =>
  new Intl.DateTimeFormat('de-DE', {
    timeZone: 'Europe/Berlin',
    day: '2-digit',
    month: '2-digit',
    year: 'numeric',
  }).format(Date.now() - ago * 86_400_000)
const europeanSheet = [
  'Datum;Fräse 1 °Brix;Fräse 1 Füllstand L;Drehbank 2 °Brix;Drehbank 2 Füllstand L',
  `${dayOf(12)};4,0;190;6,9;280`,
  `${dayOf(8)};3,8;;7,2;260`,
  `${dayOf(1)};3,5;162;7,5;240`,
].join('\n')

test('a wide European sheet becomes a book and its recipes', async () => {
  const served = await servedBook()
  await fetch(`${served.address}/api/v1/import`, { method: 'POST', body: bookForm() })
  const { page } = await openOn(desk)
  await page.goto(`${served.address}/shop/sheet`)
  await page.getByLabel('The file').setInputFiles({
    name: 'kuehlschmierstoff.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(europeanSheet),
  })
  await page.getByText('Fräse 1 °Brix').first().waitFor()
  await showInDocs(page, 'sheet', 'whole')
  await page.getByRole('button', { name: /Write 11 entries into the book/ }).click()
  await page.getByRole('link', { name: /Today/ }).first().click()
  // 3.5 × 1.6 = 5.6 % in 162 of 200 L under a band from 6 %; 7.5 × 1.6 = 12 % in 240 of 300 L above one to 10 %.
  const lean = page.getByRole('article').filter({ hasText: 'Fräse 1' })
  await lean.getByText(/^Add [\d.]+\sL at [\d.]+\s%/).waitFor()
  const rich = page.getByRole('article').filter({ hasText: 'Drehbank 2' })
  await rich.getByText(/^Pour [\d.]+\sL of deionised water, no concentrate/).waitFor()
})

test('a faulty sheet is refused whole, every fault named', async () => {
  const served = await servedBook()
  await fetch(`${served.address}/api/v1/import`, { method: 'POST', body: bookForm() })
  const { page } = await openOn(desk)
  await page.goto(`${served.address}/shop/sheet`)
  const faulty = 'Date,Machine,Brix,pH\n2026-02-30,Fräse 1,3.4,9\n2026-02-03,,3.4,9\n2026-02-04,Fräse 1,abc,19\n'
  await page
    .getByLabel('The file')
    .setInputFiles({ name: 'bad.csv', mimeType: 'text/csv', buffer: Buffer.from(faulty) })
  for (const [row, column, found] of [
    ['2', 'Date', '2026-02-30'],
    ['3', 'Machine', 'nothing'],
    ['4', 'Brix', 'abc'],
    ['4', 'pH', '19'],
  ]) {
    await page.getByRole('row', { name: new RegExp(`${row} ${column} "?${found}`) }).waitFor()
  }
  await showInDocs(page, 'sheet-faults', 'whole')
  const { entries } = (await (await fetch(`${served.address}/api/v1/entries`)).json()) as { entries: unknown[] }
  expect(entries).toEqual([])
})

function bookForm(): FormData {
  const fluids = [
    { id: 'f1', name: 'Semi 1', brixFactor: 1.6, limits: { concentration: { low: 6, target: 8, high: 10 } } },
  ]
  const sumps = [
    { id: 's1', name: 'Fräse 1', fluid: 'f1', fillVolume: 200 },
    { id: 's2', name: 'Drehbank 2', fluid: 'f1', fillVolume: 300 },
  ]
  const shop = { name: 'Werk', timeZone: 'Europe/Berlin', units: 'metric' }
  const waters = [{ id: 'di', name: 'Deionised water', kind: 'deionised' }]
  const form = new FormData()
  form.set('map', '{}')
  form.set('file', new Blob([JSON.stringify({ format: 'sumpbook-book/1', shop, fluids, waters, sumps })]), 'shop.json')
  return form
}
