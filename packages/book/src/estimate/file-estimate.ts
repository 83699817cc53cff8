import { unitsHere } from '@sumpbook/fluid'
import type { TodayReader } from '../book-parts.ts'
import { readBookDocument, setupsOf, thingsOf } from '../import/book-document.ts'
import { thingHistory } from '../setup/things.ts'
import type { EstimateDocument } from './answer-types.ts'
import { checkQuestion, type EstimateQuestion, usualAhead } from './asked.ts'
import { calendarOf } from './calendar-of.ts'
import { estimateDocument } from './estimate-document.ts'
import { shopEstimator } from './estimator.ts'
import { foldTo, freshFold } from './fold-shop.ts'
import { entryDays } from './journal-days.ts'
import { rememberedDays } from './remembered-days.ts'
import { standAt, sumpsAsked } from './stand-at.ts'

/**
 * Where the sumps of a book file stand, without a store.
 *
 * @throws {BookError} `refused-input` with every fault of the file or the question, `not-found` a sump the file does not have
 */
export async function estimateFile(
  text: string,
  question: EstimateQuestion,
  reader: TodayReader = {},
): Promise<EstimateDocument> {
  checkQuestion(question)
  const { file } = readBookDocument(text)
  const history = thingHistory(thingsOf(file), setupsOf(file))
  const things = history.at(new Date(question.at).toISOString())
  const sumps = sumpsAsked(things, question.sump)
  const { clock, calendar } = calendarOf(history)
  const ms = Date.parse(question.at)
  const source = rememberedDays(entryDays(file.entries ?? [], { history, clock }, { until: ms }))
  const context = { estimator: shopEstimator, calendar, source }
  const fold = freshFold(context)
  await foldTo(fold, Math.floor(clock.at(ms)), context)
  const standing = await standAt(fold, { ms, things, clock, source, sumps, estimator: shopEstimator })
  const { ahead = usualAhead, at } = question
  return estimateDocument(standing, { at, ahead, sumps }, { units: unitsHere(things.shop), ...reader })
}
