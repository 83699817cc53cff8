// `npx node bench/estimate/volume.ts`: seconds and memory of large books. Each part runs in a process of its own.
import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { keepResult } from './keep-result.ts'
import { growingBooks } from './volume/growing-books.ts'
import { tenYearBook } from './volume/ten-year-book.ts'
import { yearOfThousand } from './volume/year-of-thousand.ts'

const parts: Record<string, () => Promise<unknown>> = {
  'year-of-thousand': yearOfThousand,
  'ten-year-book': tenYearBook,
  'growing-books': growingBooks,
}
const { values } = parseArgs({
  options: {
    /** One part alone, in this process: to be looked into by a profiler. */
    part: { type: 'string' },
    'no-file': { type: 'boolean', default: false },
  },
})

if (values.part !== undefined) {
  const part = parts[values.part]
  if (part === undefined) throw new RangeError(`--part ${values.part}: ${Object.keys(parts).join(', ')}`)
  process.stdout.write(`${JSON.stringify({ ...((await part()) as object), peakMB: peakMB() }, null, 2)}\n`)
} else {
  const figures = Object.fromEntries(Object.keys(parts).map((name) => [name, alone(name)]))
  process.stdout.write(`${JSON.stringify(figures, null, 2)}\n`)
  if (!values['no-file']) keepResult('volume', figures)
}

function alone(name: string): unknown {
  const words = [fileURLToPath(import.meta.url), '--part', name]
  const { status, stdout, stderr } = spawnSync(process.execPath, words, { encoding: 'utf8', maxBuffer: 2 ** 26 })
  if (status !== 0) throw new Error(`${name} ended with ${status}: ${stderr}`)
  return JSON.parse(stdout)
}

/** The most that this process ever held, MB. */
function peakMB(): number {
  return Math.round(process.resourceUsage().maxRSS / 1024)
}
