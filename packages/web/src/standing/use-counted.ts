import { useEffect, useState } from 'preact/hooks'
import type { Entry } from '../api/types.ts'
import { useOutbox } from '../entry/book-outbox.ts'
import { withItsWords } from '../speech/this-reading.ts'
import type * as WithWaiting from './with-waiting.ts'

let counting: typeof WithWaiting | null = null

/** Whether what waits is counted in what is shown. */
export const isCounting = (): boolean => counting !== null

interface Answer<T> {
  data: T | undefined
  dataUpdatedAt: number
}

/**
 * An answer of the book with what was written here since and is not in it yet. How that is counted is fetched once there is something to count.
 */
export function useCounted<T, A extends Answer<T>>(
  answer: A,
  count: (by: typeof WithWaiting, data: NonNullable<A['data']>, entries: readonly Entry[]) => T,
): A {
  const [, setLoaded] = useState(counting !== null)
  const entries = useWrittenSince(answer.dataUpdatedAt)
  const isNeeded = entries.length > 0 && counting === null
  useEffect(() => {
    if (!isNeeded) return
    withItsWords(import('./with-waiting.ts')).then(
      (loaded) => {
        counting = loaded
        setLoaded(true)
      },
      // Out of reach before it was ever fetched: what waits is then not counted, and the page says that it waits.
      () => {},
    )
  }, [isNeeded])
  const { data } = answer
  if (data === undefined || data === null || counting === null || entries.length === 0) return answer
  return Object.create(answer, { data: { value: count(counting, data as NonNullable<A['data']>, entries) } }) as A
}

/** Entries that an answer of then does not hold: what waits, and what arrived after it. What was refused counts nowhere. */
function useWrittenSince(at: number): readonly Entry[] {
  return useOutbox()
    .all.filter(
      ({ problem, taken }) => problem === null && (taken === null || (taken.heldFor === null && taken.at > at)),
    )
    .map(({ entry }) => entry)
}
