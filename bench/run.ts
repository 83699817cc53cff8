// `npm run bench`: measures what this version promises, beside its peers, and keeps the figures in bench/results.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { benchCalc } from './calc.ts'
import { benchImport } from './import-csv.ts'
import { machine } from './machine.ts'
import { benchPage } from './page-size.ts'
import { benchPut } from './put-entries.ts'
import { benchRoundBundle } from './round-bundle.ts'
import { benchStart } from './start.ts'
import { benchToday } from './today-large.ts'

const folder = mkdtempSync(join(tmpdir(), 'sumpbook-bench-'))
try {
  const results = {
    on: new Date().toISOString().slice(0, 10),
    machine: machine(),
    page: { ...benchPage(), ...(await benchRoundBundle()) },
    calc: benchCalc(),
    start: await benchStart(folder),
    importCsv: benchImport(folder),
    put: await benchPut(folder),
    today: await benchToday(),
  }
  const text = `${JSON.stringify(results, null, 2)}\n`
  writeFileSync(fileURLToPath(new URL(`results/${results.on}.json`, import.meta.url)), text)
  process.stdout.write(text)
} finally {
  rmSync(folder, { recursive: true, force: true })
}
