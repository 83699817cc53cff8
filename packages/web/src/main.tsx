import { QueryClientProvider } from '@tanstack/preact-query'
import { render } from 'preact'
import { queries } from './api/queries.ts'
import { App, fetchAhead } from './app.tsx'
import { keepTrying } from './entry/book-outbox.ts'
import { watchVersions } from './offline/new-version.ts'
import { useObserved } from './offline/observed.ts'
import { watchOtherPages } from './offline/reach.ts'
import { readyForRound } from './offline/ready-for-round.ts'
import { thisKept } from './offline/this-kept.ts'
import { keepFiguresWhole } from './say/unbroken.ts'
import { speakHere, thisReading, watchOtherReading } from './speech/this-reading.ts'
import './look/look.css'
import './look/shell.css'

/** What was last seen is there at once, with its age; what the book says now comes after it. A store that hangs is not waited for. */
async function open(): Promise<void> {
  watchOtherPages()
  watchVersions()
  keepTrying()
  watchOtherReading()
  keepFiguresWhole()
  await Promise.all([
    // Words that cannot be fetched are missed less than the app.
    speakHere()
      .catch((error: unknown) => console.error(error))
      .then(() => fetchAhead(location.pathname)),
    Promise.race([thisKept.restore(queries), new Promise((resolve) => setTimeout(resolve, 1_500))]),
  ])
  thisKept.keepFrom(queries)
  render(
    <QueryClientProvider client={queries}>
      <Spoken />
    </QueryClientProvider>,
    document.querySelector('#app')!,
  )
  readyForRound()
}

/** The whole app anew where it is spoken otherwise: nothing that was said before stays on the page. */
function Spoken() {
  return <App key={JSON.stringify(useObserved(thisReading))} />
}

void open()
