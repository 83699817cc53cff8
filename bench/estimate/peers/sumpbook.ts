import { calendarOf } from '../../../packages/book/src/estimate/calendar-of.ts'
import { estimateDocument } from '../../../packages/book/src/estimate/estimate-document.ts'
import { shopEstimator } from '../../../packages/book/src/estimate/estimator.ts'
import { type Fold, foldTo, freshFold } from '../../../packages/book/src/estimate/fold-shop.ts'
import { entryDays } from '../../../packages/book/src/estimate/journal-days.ts'
import { rememberedDays } from '../../../packages/book/src/estimate/remembered-days.ts'
import { standAt, sumpsAsked } from '../../../packages/book/src/estimate/stand-at.ts'
import { readBookDocument, setupsOf, thingsOf } from '../../../packages/book/src/import/book-document.ts'
import { thingHistory } from '../../../packages/book/src/setup/things.ts'
import type { BenchBook } from '../book.ts'
import { estimatesOf } from './command-line.ts'
import type { Peer, Question, SumpEstimate } from './peer.ts'

/**
 * What is measured here, in this process: the functions that `estimateFile` is built of. A book is read and told once and its
 * fold goes on from one instant to the next, which gives what a fold from the first day gives.
 */
export const sumpbook: Peer = {
  name: 'sumpbook',
  async estimate(book, question) {
    const opened = known.get(book) ?? openForEstimates(book)
    known.set(book, opened)
    return await opened(question)
  },
}

const known = new WeakMap<BenchBook, (question: Question) => Promise<Map<string, SumpEstimate>>>()

function openForEstimates(book: BenchBook) {
  const { file } = readBookDocument(JSON.stringify(book))
  const history = thingHistory(thingsOf(file), setupsOf(file))
  const { clock, calendar } = calendarOf(history)
  const entries = file.entries ?? []
  const estimator = shopEstimator
  let context = { estimator, calendar, source: rememberedDays(entryDays(entries, { history, clock })) }
  let fold: Fold<ReturnType<typeof estimator.open>> = freshFold(context)

  return async ({ atMs: ms, aheadDays: ahead }: Question) => {
    const at = new Date(ms).toISOString()
    const things = history.at(at)
    const today = Math.floor(clock.at(ms))
    if (fold.ready > today) {
      context = { ...context, source: rememberedDays(entryDays(entries, { history, clock })) }
      fold = freshFold(context)
    }
    await foldTo(fold, today, context)
    const sumps = sumpsAsked(things, undefined)
    const source = entryDays(entries, { history, clock }, { until: ms })
    const standing = await standAt(fold, { ms, things, clock, source, sumps, estimator })
    const reader = { units: things.shop.units }
    return estimatesOf(estimateDocument(standing, { at, ahead, sumps }, reader), { atMs: ms, aheadDays: ahead })
  }
}
