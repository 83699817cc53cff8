import { useOutbox } from '../entry/book-outbox.ts'
import { waitingPhotos } from '../photo/waiting-count.ts'
import { useObserved } from './observed.ts'
import type { Standing } from './queue-words.ts'
import { clockAhead, reach, staysOffLine } from './reach.ts'

/** How this device stands towards the book, as it changes. */
export const useStanding = (): Standing => ({
  view: useOutbox(),
  photos: useObserved(waitingPhotos),
  reach: useObserved(reach),
  staysOffLine: useObserved(staysOffLine),
  clockAhead: useObserved(clockAhead),
})
