import type { ShopEstimate } from '@sumpbook/fluid'
import { unitsHere } from '@sumpbook/fluid'
import type { TodayReader } from '../book-parts.ts'
import { mapInTurns } from '../in-turns.ts'
import type { EstimateDocument } from './answer-types.ts'
import { checkQuestion, type EstimateQuestion, usualAhead } from './asked.ts'
import type { Checkpoints } from './checkpoints.ts'
import { estimateDocument } from './estimate-document.ts'

/** What a book is asked; the time is now unless another is asked for. */
export type EstimateOptions = Partial<EstimateQuestion> & { reader?: TodayReader }

/**
 * Where the sumps of a book stand. Queries never write.
 *
 * @throws {BookError} `refused-input` a question that cannot be answered, `not-found` a sump the book does not have
 */
export async function readEstimate(
  checkpoints: Checkpoints<ShopEstimate>,
  now: Date,
  { reader = {}, at = now.toISOString(), ahead = usualAhead, sump }: EstimateOptions,
): Promise<EstimateDocument> {
  const question = { at, ahead, ...(sump === undefined ? {} : { sump }) }
  checkQuestion(question)
  const { standing, sumps } = await checkpoints.standing(Date.parse(at), sump)
  const units = unitsHere(standing.things.shop)
  // A large shop takes a while: sump by sump, whoever else waits gets a turn.
  const documents = await mapInTurns(sumps, (one) =>
    estimateDocument(standing, { at, ahead, sumps: [one] }, { units, ...reader }),
  )
  const none = estimateDocument(standing, { at, ahead, sumps: [] }, { units, ...reader })
  return { ...none, sumps: Object.assign({}, ...documents.map((document) => document.sumps)) }
}
