import { utc } from '../journal/order.ts'

/** By instant, then by id: the same on every device, whatever the order of arrival. */
export function compareEntries(a: { at: string; id: string }, b: { at: string; id: string }): number {
  const [first, second] = [utc(a.at), utc(b.at)]
  if (first !== second) return first < second ? -1 : 1
  return a.id < b.id ? -1 : a.id > b.id ? 1 : 0
}
