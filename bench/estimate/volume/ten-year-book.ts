import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { openBook, openSqliteStore, sourceOf } from '../../../packages/book/src/index.ts'
import { digits, median } from '../../machine.ts'
import { timed } from './stopwatch.ts'
import { yearsOfEntries } from './years-of-entries.ts'

const hourMs = 3_600_000
const dayMs = 24 * hourMs

/** Ten years of a hundred sumps in a database: one entry comes, one sump is asked for. */
export async function tenYearBook() {
  const folder = mkdtempSync(join(tmpdir(), 'estimate-volume-'))
  try {
    const file = join(folder, 'book.sqlite')
    const written = yearsOfEntries({ sumps: 100, years: 10, looksAYear: 65 })
    const endMs = Date.parse(written.entries.at(-1)!.at)
    let nowMs = endMs + hourMs
    const clock = () => new Date(nowMs)
    const first = openBook(await openSqliteStore(file), clock)
    const imported = await timed(() => first.importFile(sourceOf('book.json', Buffer.from(JSON.stringify(written)))))
    const begun = await timed(() => first.estimate({ sump: 's1' }))
    await first.settle()
    await first.close()

    const book = openBook(await openSqliteStore(file), clock)
    const opened = await timed(() => book.estimate({ sump: 's1' }))
    let n = 0
    /** So many times: an entry so many days old is written, then its sump is asked for. */
    const rounds = async (count: number, ageDays: number) => {
      const put: number[] = []
      const asked: number[] = []
      const busy: number[] = []
      for (let round = 0; round < count; round++) {
        nowMs += 10 * 60_000
        const sump = `s${1 + (round % 100)}`
        n += 1
        const entry = {
          id: `10000000-0000-4000-8000-${n.toString(16).padStart(12, '0')}`,
          at: new Date(nowMs - ageDays * dayMs - 60_000).toISOString(),
          ...(round % 2 === 0
            ? { kind: 'reading', brix: 6.8, pumps: 'stopped' }
            : { kind: 'addition', volume: 12, strength: 3 }),
          sump,
        }
        const cpu = process.cpuUsage()
        const from = performance.now()
        await book.put(entry)
        const between = performance.now()
        await book.estimate({ sump })
        asked.push(performance.now() - between)
        put.push(between - from)
        busy.push(process.cpuUsage(cpu).user / 1000)
      }
      const together = put.map((ms, i) => ms + asked[i]!)
      return {
        entryAgeDays: ageDays,
        times: count,
        putMs: digits(median(put)),
        estimateMs: digits(median(asked)),
        bothMs: digits(median(together)),
        slowestBothMs: digits(Math.max(...together)),
        userMs: digits(median(busy)),
      }
    }
    const today = await rounds(60, 0)
    const late = [await rounds(10, 1), await rounds(10, 7), await rounds(5, 60)]
    await book.close()
    return {
      sumps: 100,
      entries: written.entries.length,
      import: imported.taken,
      firstEstimateOfAll: begun.taken,
      estimateOfNextProgram: opened.taken,
      today,
      late,
      limit: {
        what: 'one entry and one sump, ms',
        atMost: 20,
        found: today.bothMs,
        foundOfProcessor: today.userMs,
        met: today.bothMs <= 20,
      },
    }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
