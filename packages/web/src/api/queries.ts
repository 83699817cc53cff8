import { keepPreviousData, QueryCache, QueryClient, useQuery } from '@tanstack/preact-query'
import { onTaken } from '../entry/book-outbox.ts'
import { setSignedIn } from '../entry/this-device.ts'
import {
  Refusal,
  readBook,
  readMeasurements,
  readOtherWater,
  readOutlook,
  readPlan,
  readSump,
  readSumps,
  readToday,
} from './client.ts'
import { readSession } from './people.ts'

/** One cache for the app. What the server refuses is not asked again; what is out of reach is, by the next look at it. */
export const queries: QueryClient = new QueryClient({
  queryCache: new QueryCache({
    onError: (error, { queryKey: [what] }) => {
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
      retry: (tries, error) => !(error instanceof Refusal) && tries < 1,
    },
  },
})

export const useBook = () => useQuery({ queryKey: ['book'], queryFn: readBook, staleTime: 300_000 })
/** Who is signed in here; remembered for entries that are written out of reach of the server. */
export const useSession = () =>
  useQuery({
    queryKey: ['session'],
    staleTime: 60_000,
    queryFn: async () => {
      const session = await readSession()
      setSignedIn(session.person?.id ?? null)
      return session
    },
  })
export const useToday = () => useQuery({ queryKey: ['today'], queryFn: readToday })
export const useSumps = () => useQuery({ queryKey: ['sumps'], queryFn: readSumps })
export const useSump = (id: string) =>
  useQuery({ queryKey: ['sumps', id], queryFn: () => readSump(id), enabled: id !== '' })
/** The drawing stays while another period of it is fetched. */
export const useOutlook = (id: string, daysBack: number) =>
  useQuery({
    queryKey: ['sumps', id, 'outlook', daysBack],
    queryFn: () => readOutlook(id, daysBack),
    placeholderData: keepPreviousData,
  })
export const usePlan = (id: string, question: { water: string; strength: number | null }) =>
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
export const useMeasurements = (kind: 'water' | 'mixer', id: string) =>
  useQuery({ queryKey: ['measurements', kind, id], queryFn: () => readMeasurements(kind, id) })

/** Something was written: everything shown may be other now. */
export const refresh = () => queries.invalidateQueries()
onTaken(refresh)
