import { unitsHere } from '@sumpbook/fluid'
import { keepPreviousData, QueryCache, QueryClient, useQuery } from '@tanstack/preact-query'
import { onTaken } from '../entry/book-outbox.ts'
import { setSignedIn } from '../entry/this-device.ts'
import { reach, staysOffLine } from '../offline/reach.ts'
import { seenNowBy, thisKept } from '../offline/this-kept.ts'
import { readerOf } from '../say/units.ts'
import { thisReading } from '../speech/this-reading.ts'
import { useCounted } from '../standing/use-counted.ts'
import {
  ask,
  type PlanQuestion,
  Refusal,
  readBook,
  readDiagnosis,
  readMeasurements,
  readOtherWater,
  readOutlook,
  readPlan,
  readSump,
  readSumps,
  readToday,
} from './client.ts'
import { readSession, type Session } from './people.ts'
import type { Book, ShopOfBook, Today, Units } from './types.ts'

/** One cache for the app. What the server refuses is not asked again; what is out of reach is, by the next look at it. */
export const queries: QueryClient = new QueryClient({
  queryCache: new QueryCache({
    onError: (error, { queryKey: [what] }) => {
      if (error instanceof Refusal && error.status === 401) void thisKept.forget()
      // A session that has ended meanwhile: the book is asked for, and the door opens in place of it.
      if (error instanceof Refusal && error.status === 401 && what !== 'book') {
        void queries.invalidateQueries({ queryKey: ['book'] })
      }
    },
  }),
  defaultOptions: {
    queries: {
      staleTime: 15_000,
      networkMode: 'always',
      // A shift: what was looked at is there for the rest of it, also out of reach.
      gcTime: 12 * 3_600_000,
      retry: (tries, error) => !(error instanceof Refusal) && tries < 1,
    },
  },
})

/** An answer with the units that this device reads in. The shop's own are kept beside them. */
export function asReadHere<T extends { shop: { units: Units } }>(answer: T): T {
  const { shop } = answer
  const units = unitsHere(shop)
  return units === shop.units ? answer : { ...answer, shop: { ...shop, units, ownUnits: shop.units } }
}

/** The shop as it is set up, whatever this device reads in. */
export const asSetUp = ({ ownUnits, ...shop }: ShopOfBook): ShopOfBook => ({ ...shop, units: ownUnits ?? shop.units })

const book = { queryKey: ['book'], queryFn: readBook, staleTime: 300_000 }
export const useBook = () => useQuery({ ...book, select: asReadHere<Book> })
/** Who is signed in here; remembered for entries that are written out of reach of the server. */
export const useSession = () =>
  useQuery({
    queryKey: ['session'],
    staleTime: 60_000,
    queryFn: async () => {
      const session = await readSession()
      setSignedIn(session.person?.id ?? null)
      await seen(session)
      return session
    },
  })

/** A device that shows the book to all who stand before it keeps it for all of them; nobody signed in keeps nothing. */
async function seen({ accounts, by, device, person }: Session): Promise<void> {
  if (accounts && by === 'nobody') await thisKept.forget()
  else await seenNowBy(device?.kind === 'shared' ? device.id : (person?.id ?? ''))
}

/** Who reads what waits on this device: the shop's units, by this device's clock. */
const asked = () => ({
  reader: readerOf(unitsHere(queries.getQueryData<Book>(['book'])?.shop ?? { units: 'metric' })),
  now: Date.now(),
})
// Every answer is another, since it is seen from another moment: looking for what is the same in it would only take time.
const today = { queryKey: ['today'], queryFn: readToday, structuralSharing: false }
const sumps = { queryKey: ['sumps'], queryFn: readSumps }
const sump = (id: string) => ({ queryKey: ['sumps', id], queryFn: () => readSump(id) })
const outlook = (id: string, daysBack: number) => ({
  queryKey: ['sumps', id, 'outlook', daysBack],
  queryFn: () => readOutlook(id, daysBack),
})

/** The list, the sumps and each of them with what was written here and is not in the book's answer. */
export const useToday = () =>
  useCounted(useQuery({ ...today, select: asReadHere<Today> }), (by, answer, entries) =>
    by.todayWithWaiting(answer, entries, asked()),
  )
export const useSumps = () =>
  useCounted(useQuery(sumps), (by, answer, entries) => answer.map((one) => by.withWaiting(one, entries, asked())))
export const useSump = (id: string) =>
  useCounted(useQuery({ ...sump(id), enabled: id !== '' }), (by, answer, entries) =>
    by.withWaiting(answer, entries, asked()),
  )

/** How much of a sump's past its page begins with, days. */
export const pastAtFirst = 91

/** Asks ahead for what a place shows: what the book answers, or that it does not, is found by the place when it opens. */
export const askAhead = {
  book: () => void queries.prefetchQuery(book),
  today: () => void queries.prefetchQuery(today),
  sumps: () => void queries.prefetchQuery(sumps),
  sump: (id: string) => {
    void queries.prefetchQuery(sump(id))
    void queries.prefetchQuery(outlook(id, pastAtFirst))
  },
}

/** The pages of the sumps that were not looked at lately, one after the other: out of reach they are there. */
export async function fetchPagesAhead(staleTime: number): Promise<void> {
  const all = await queries.fetchQuery(sumps)
  for (const what of ['calendar', 'samples', 'jobs']) {
    await queries.fetchQuery({ queryKey: [what], queryFn: () => ask(`/${what}`), staleTime })
  }
  // More than that nobody walks in a round, and the server has others to answer.
  for (const { sump: id } of all.slice(0, 60)) {
    await queries.fetchQuery({ ...sump(id), staleTime })
  }
}
/** The drawing stays while another period of it is fetched. */
export const useOutlook = (id: string, daysBack: number) =>
  useQuery({ ...outlook(id, daysBack), placeholderData: keepPreviousData })
export const usePlan = (id: string, question: PlanQuestion) =>
  useQuery({
    queryKey: ['sumps', id, 'plan', question],
    queryFn: () => readPlan(id, question),
    placeholderData: keepPreviousData,
  })
export const useOtherWater = (id: string, question: { water: string; since: string }) =>
  useQuery({
    queryKey: ['sumps', id, 'other-water', question],
    queryFn: () => readOtherWater(id, question),
    enabled: question.since !== '',
  })
export const useDiagnosis = (id: string) =>
  useQuery({ queryKey: ['sumps', id, 'diagnosis'], queryFn: () => readDiagnosis(id) })
export const useMeasurements = (kind: 'water' | 'mixer', id: string) =>
  useQuery({ queryKey: ['measurements', kind, id], queryFn: () => readMeasurements(kind, id) })

/** Something was written: everything shown may be other now. */
export function refresh(): Promise<void> {
  // What an empty book answered ("nothing to do") is not shown for a moment once it is filled.
  if (queries.getQueryData<Book>(['book'])?.empty === true) queries.removeQueries({ type: 'inactive' })
  return queries.invalidateQueries()
}
onTaken(refresh)

/**
 * Read in another language from now on: what the book said is asked for anew. Out of reach its answers stay as they were said, which
 * is better than none.
 */
thisReading.subscribe(() => {
  if (reach.now().state === 'out-of-reach' || staysOffLine.now()) return void refresh()
  queries.clear()
  void thisKept.drop()
})
