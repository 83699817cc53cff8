import { calendarOf } from '../../../packages/book/src/estimate/calendar-of.ts'
import { estimateDocument } from '../../../packages/book/src/estimate/estimate-document.ts'
import { shopEstimator } from '../../../packages/book/src/estimate/estimator.ts'
import { foldTo, freshFold } from '../../../packages/book/src/estimate/fold-shop.ts'
import { entryDays } from '../../../packages/book/src/estimate/journal-days.ts'
import type { ShopDay } from '../../../packages/book/src/estimate/shop-events.ts'
import { standAt } from '../../../packages/book/src/estimate/stand-at.ts'
import { copyTranslation, freshTranslation } from '../../../packages/book/src/estimate/translation.ts'
import { readBookDocument, setupsOf, thingsOf } from '../../../packages/book/src/import/book-document.ts'
import { estimateFile } from '../../../packages/book/src/index.ts'
import { thingHistory } from '../../../packages/book/src/setup/things.ts'
import { timed } from './stopwatch.ts'
import { yearsOfEntries } from './years-of-entries.ts'

/** A thousand sumps, a year, a hundred entries each: from the book file to its answers, part by part and then in one. */
export async function yearOfThousand() {
  const book = yearsOfEntries({ sumps: 1000, years: 1, looksAYear: 50 })
  const text = JSON.stringify(book)
  const at = new Date(Date.parse(book.entries.at(-1)!.at) + 3_600_000).toISOString()
  const ms = Date.parse(at)

  const read = await timed(() => readBookDocument(text))
  const { file } = read.value
  const opened = await timed(() => {
    const history = thingHistory(thingsOf(file), setupsOf(file))
    return { history, ...calendarOf(history) }
  })
  const { history, clock, calendar } = opened.value
  const source = entryDays(file.entries ?? [], { history, clock }, { until: ms })
  const today = Math.floor(clock.at(ms))
  const memory = freshTranslation()
  const told = await timed(async () => {
    const days: ShopDay[] = []
    for await (const day of source.days({ from: Number.NEGATIVE_INFINITY, before: today }, memory)) days.push(day)
    return days
  })
  const events = told.value.reduce((sum, day) => sum + day.events.length, 0)
  const ready = {
    async *days({ from, before }: { from: number; before: number }) {
      for (const day of told.value) if (day.day >= from && day.day < before) yield day
    },
  }
  const context = { estimator: shopEstimator, calendar, source: ready }
  const fold = freshFold(context)
  const folded = await timed(() => foldTo(fold, today, context))
  fold.memory = copyTranslation(memory)
  const things = history.at(at)
  const sumps = [...things.sump.values()]
  const answered = await timed(async () => {
    const standing = await standAt(fold, { ms, things, clock, source, sumps, estimator: shopEstimator })
    return estimateDocument(standing, { at, ahead: [7, 14], sumps }, { units: things.shop.units })
  })
  const wanted = [opened.taken, told.taken, folded.taken, answered.taken]
  const estimated = (of: 'seconds' | 'userSeconds') =>
    Number(wanted.reduce((sum, taken) => sum + taken[of], 0).toPrecision(3))
  const whole = await timed(() => estimateFile(text, { at, ahead: [7, 14] }))
  // Both ways must come to the same, or the parts are not those of the whole.
  const one = 's500'
  if (JSON.stringify(whole.value.sumps[one]) !== JSON.stringify(answered.value.sumps[one])) {
    throw new Error('the parts come to something else than the whole')
  }
  return {
    sumps: 1000,
    entries: book.entries.length,
    events,
    doubts: Object.values(answered.value.sumps).reduce((sum, { doubts }) => sum + doubts.length, 0),
    readAndCheckFile: read.taken,
    things: opened.taken,
    translate: told.taken,
    fold: folded.taken,
    answers: answered.taken,
    estimated: { seconds: estimated('seconds'), userSeconds: estimated('userSeconds') },
    estimateFileWhole: whole.taken,
    limit: {
      what: 'translate, fold and answer, s',
      atMost: 2,
      found: estimated('seconds'),
      foundOfProcessor: estimated('userSeconds'),
      met: estimated('seconds') <= 2,
    },
  }
}
