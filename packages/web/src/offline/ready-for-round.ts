import { fetchPagesAhead } from '../api/queries.ts'
import { fetchAllPages } from '../later.tsx'
import { withItsWords } from '../speech/this-reading.ts'
import { fetchDeviceSheet } from './queue-state.tsx'
import { reach, staysOffLine } from './reach.ts'

const soonMs = 4_000
const againMs = 15 * 60_000
/** A page of a sump looked at within the hour is young enough. */
const youngMs = 3_600_000

/**
 * Sees to it that a round can be walked out of reach: the sumps' pages are kept, and where no worker keeps the app's files (plain
 * http) the code of all pages is fetched while there is a network. Not on a connection whose user asks to save.
 */
export function readyForRound(): void {
  const ready = async () => {
    if (reach.now().state !== 'in-reach' || staysOffLine.now() || document.visibilityState === 'hidden') return
    if ((navigator as { connection?: { saveData?: boolean } }).connection?.saveData === true) return
    await fetchDeviceSheet()
    if (navigator.serviceWorker === undefined) await fetchAllPages()
    await fetchPagesAhead(youngMs)
  }
  // What fails now is there to be fetched when somebody goes there, or next time.
  const quietly = () => void ready().catch(() => {})
  setTimeout(quietly, soonMs)
  // Pictures that were taken out of reach go once the book is there.
  setTimeout(
    () =>
      void withItsWords(import('../photo/watch-photos.ts'))
        .then(({ watchPhotos }) => watchPhotos())
        .catch(() => {}),
    soonMs,
  )
  setInterval(quietly, againMs)
}
