import { setImmediate as nextTurn } from 'node:timers/promises'

/** Milliseconds after which whoever else waits gets a turn. */
const turnMs = 15

/** Works through a list without keeping others waiting: the work itself waits for nothing. */
export async function mapInTurns<T, R>(items: readonly T[], work: (item: T) => R): Promise<R[]> {
  const done: R[] = []
  let since = performance.now()
  for (const item of items) {
    done.push(work(item))
    if (performance.now() - since < turnMs) continue
    await nextTurn()
    since = performance.now()
  }
  return done
}
