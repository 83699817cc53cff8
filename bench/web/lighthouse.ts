/**
 * What Lighthouse says of the app on localhost, on a phone as it simulates one: `npm install --no-save lighthouse@12.2.3`, then
 * `node bench/web/lighthouse.ts`. The package is not one of the project's, since it is only used here.
 */
import { type AddressInfo, createServer } from 'node:net'
import { openChromium } from '../../packages/web/browser/chromium.ts'
import { serveBook } from '../../packages/web/browser/served-book.ts'
import { median } from '../machine.ts'
import { keepFigures } from '../record/keep-figures.ts'

const places = ['/', '/round', '/sumps/mill7', '/journal']
const least = { performance: 95, accessibility: 100, 'best-practices': 95 } as const
type Category = keyof typeof least

/** The part of its report that is read here. */
interface Report {
  lhr: {
    categories: Record<Category, { score: number | null; auditRefs: { id: string; weight: number }[] }>
    audits: Record<string, { score: number | null; title: string; numericValue?: number }>
  }
}
type Lighthouse = (
  url: string,
  flags: { port: number; onlyCategories: readonly string[]; output: 'json'; logLevel: 'error' },
) => Promise<Report>

const name = process.env.LIGHTHOUSE ?? 'lighthouse'
const { default: lighthouse } = (await import(name).catch(() => {
  process.stderr.write('Lighthouse is not installed: npm install --no-save lighthouse@12.2.3\n')
  process.exit(1)
})) as { default: Lighthouse }

const served = await serveBook()
const base = served.address.replace(/\/$/, '')
await fetch(`${base}/api/v1/demo`, { method: 'POST', headers: { origin: base } })
await fetch(`${base}/api/v1/today`)
const port = await freePort()
const browser = await openChromium(`--remote-debugging-port=${port}`)
const pages: Record<string, unknown> = {}
let good = true
for (const place of places) {
  const reports: Report['lhr'][] = []
  for (let i = 0; i < 3; i++) {
    const { lhr } = await lighthouse(`${base}${place}`, {
      port,
      onlyCategories: Object.keys(least),
      output: 'json',
      logLevel: 'error',
    })
    reports.push(lhr)
  }
  const score = (category: Category) =>
    Math.round(100 * median(reports.map(({ categories }) => categories[category].score ?? 0)))
  const figure = (audit: string) =>
    Math.round(median(reports.map(({ audits }) => audits[audit]?.numericValue ?? Number.NaN)))
  const categories = Object.keys(least) as Category[]
  const scores = Object.fromEntries(categories.map((category) => [category, score(category)]))
  const [last] = reports.slice(-1)
  const short = categories.flatMap((category) =>
    last!.categories[category].auditRefs
      .filter(({ id, weight }) => weight > 0 && (last!.audits[id]?.score ?? 1) < 0.9)
      .map(({ id }) => `${id}: ${last!.audits[id]!.title}`),
  )
  pages[place] = {
    ...scores,
    lcpMs: figure('largest-contentful-paint'),
    blockedMs: figure('total-blocking-time'),
    short,
  }
  good &&= categories.every((category) => score(category) >= least[category])
}
await browser.close()
await served.end()
keepFigures('lighthouse on localhost, a simulated phone, medians of 3', { least, pages }, good)

function freePort(): Promise<number> {
  return new Promise((resolve) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const { port } = server.address() as AddressInfo
      server.close(() => resolve(port))
    })
  })
}
