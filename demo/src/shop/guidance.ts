import type { BookDocument } from '../book-document.ts'

/** The guidance that the example shop has chosen, and what it settled for itself: slides every fortnight, read as those it bought say. */
export const guidance: BookDocument['shop']['guidance'] = {
  pack: 'germany',
  edition: '2007',
  own: { bacteria: { everyDays: 14, readFromHours: 40, readToHours: 80 } },
}
