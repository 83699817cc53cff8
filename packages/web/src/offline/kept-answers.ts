import { hashKey, type QueryClient } from '@tanstack/preact-query'
import type { DeviceStore, KeptAnswer } from './device-store.ts'

/** What a round needs out of reach: the shop, today's list, the sumps and the pages of each, what is due, claimed and under way, slides to read, and who is signed in. */
const isKept = ([what, of, part]: readonly unknown[]): boolean =>
  what === 'book' ||
  what === 'today' ||
  what === 'session' ||
  what === 'claims' ||
  what === 'calendar' ||
  what === 'samples' ||
  (what === 'jobs' && of === undefined) ||
  (what === 'sumps' && (part === undefined || part === 'outlook'))

/** Without these the app does not open; the others come after it. */
const isFirst = ([what, of]: readonly unknown[]): boolean => isKept([what]) && of === undefined
/** What nobody has asked for again in so long is of no use on a round. */
const oldestMs = 30 * 24 * 3_600_000

/** Writing a long answer down takes a page as long as drawing it, which comes first. */
const afterPictureMs = 100

export interface KeptAnswers {
  /** Gives the cache what was kept for whom; resolves once the app can open with it. */
  restore(queries: QueryClient): Promise<void>
  /** Keeps each answer as it comes, from now on. */
  keepFrom(queries: QueryClient): void
  /** Who sees the book here is another from now on: nothing that was kept for others is left. */
  handTo(who: string): Promise<void>
  /** Nothing that was kept is left, as when it is read in another language; what comes from now on is kept. */
  drop(): Promise<void>
  /** Nobody is signed in any more: nothing is left of what was kept, and nothing more is kept until somebody is. */
  forget(): Promise<void>
  isForgotten(): boolean
}

/**
 * The last answers of the book on this device, each kept for whom it was given to. A device that keeps nothing (full,
 * forbidden) only opens without them.
 *
 * @param whoNow who sees the book on this device, as it knows by itself; '' for the book without accounts
 */
export function keptAnswers(store: DeviceStore, whoNow: () => string, now: () => number = Date.now): KeptAnswers {
  const all = (who: string) => store.use((database) => database.getAllFromIndex('answers', 'who', who))
  const put = (kept: KeptAnswer) =>
    store.use((database) => database.put('answers', kept, `${kept.who}\n${hashKey(kept.question)}`))
  const clear = (isGone: (kept: KeptAnswer) => boolean) =>
    store.use(async (database) => {
      const transaction = database.transaction('answers', 'readwrite')
      for (let at = await transaction.store.openCursor(); at !== null; at = await at.continue()) {
        if (isGone(at.value)) await at.delete()
      }
      await transaction.done
    })
  const give = (queries: QueryClient, { question, answer, at }: KeptAnswer) => {
    // What has come from the book meanwhile is younger.
    if (queries.getQueryData(question) !== undefined) return
    queries.setQueryData(question, answer, { updatedAt: at })
    // It is as old as it says, and an app that is opened anew asks anew, however young it is: others write too.
    void queries.invalidateQueries({ queryKey: question, exact: true, refetchType: 'none' })
  }
  let isForgotten = false

  return {
    async restore(queries) {
      const who = whoNow()
      const kept = (await all(who).catch(() => [])).filter(({ at }) => now() - at < oldestMs)
      for (const one of kept.filter(({ question }) => isFirst(question))) give(queries, one)
      setTimeout(() => {
        for (const one of kept.filter(({ question }) => !isFirst(question))) give(queries, one)
      })
      void clear(({ at }) => now() - at >= oldestMs).catch(() => {})
    },
    keepFrom(queries) {
      queries.getQueryCache().subscribe(({ type, query }) => {
        if (type !== 'updated' || !isKept(query.queryKey)) return
        const { data, dataUpdatedAt, status, fetchStatus } = query.state
        if (status !== 'success' || fetchStatus !== 'idle' || isForgotten) return
        if (seen.get(query.queryHash) === dataUpdatedAt) return
        seen.set(query.queryHash, dataUpdatedAt)
        const who = whoNow()
        setTimeout(() => {
          // Nothing younger has come, and what was kept was not given up meanwhile.
          if (seen.get(query.queryHash) !== dataUpdatedAt) return
          void put({ who, question: query.queryKey, answer: data, at: dataUpdatedAt }).catch(() => {})
        }, afterPictureMs)
      })
    },
    async handTo(who) {
      isForgotten = false
      seen.clear()
      await clear((kept) => kept.who !== who).catch(() => {})
    },
    async drop() {
      seen.clear()
      await clear(() => true).catch(() => {})
    },
    isForgotten: () => isForgotten,
    async forget() {
      isForgotten = true
      seen.clear()
      await clear(() => true).catch(() => {})
    },
  }
}

const seen = new Map<string, number>()
