import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { digits, median } from './machine.ts'
import { runOnce } from './processes.ts'

const rows = 100_000
const sumps = 40

/** A CSV of 100,000 rows (level, Brix and pH of 40 machines) imported into a book: seconds and peak memory of the process. */
export function benchImport(folder: string) {
  const book = join(folder, 'shop.json')
  const sheet = join(folder, 'readings.csv')
  writeFileSync(book, JSON.stringify(shop()))
  writeFileSync(sheet, readings())
  const runs = [1, 2, 3].map((n) => {
    const data = join(folder, `import-${n}`)
    runOnce(['import', book, '--data', data])
    return runOnce(['import', sheet, '--data', data])
  })
  const again = runOnce(['import', sheet, '--data', join(folder, 'import-1')])
  return {
    rows,
    entries: rows * 3,
    seconds: digits(median(runs.map(({ seconds }) => seconds))),
    limitSeconds: 20,
    peakMB: digits(Math.max(...runs.map(({ peakMB }) => peakMB))),
    limitPeakMB: 300,
    againSeconds: digits(again.seconds),
  }
}

const shop = () => ({
  format: 'sumpbook-book/1',
  shop: { name: 'Bench', timeZone: 'Europe/Berlin', units: 'metric' },
  fluids: [{ id: 'f1', name: 'Semi 1', brixFactor: 1.6, limits: { concentration: { low: 6, target: 8, high: 10 } } }],
  sumps: Array.from({ length: sumps }, (_, i) => ({
    id: `s${i + 1}`,
    name: `Mill ${i + 1}`,
    fluid: 'f1',
    fillVolume: 200,
  })),
})

function readings(): string {
  const lines = ['Date,Machine,Brix,Level (L),pH']
  const first = Date.parse('2019-01-01T06:00:00Z')
  for (let row = 0; row < rows; row++) {
    const at = new Date(first + Math.floor(row / sumps) * 86_400_000).toISOString().slice(0, 10)
    const brix = (4 + ((row * 7) % 23) / 10).toFixed(1)
    lines.push(
      `${at},Mill ${(row % sumps) + 1},${brix},${150 + ((row * 11) % 50)},${(8.5 + ((row * 3) % 10) / 10).toFixed(1)}`,
    )
  }
  return `${lines.join('\n')}\n`
}
