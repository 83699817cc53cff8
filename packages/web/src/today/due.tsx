import type { Reader } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import type { Due, Entry } from '../api/types.ts'
import { write } from '../entry/book-outbox.ts'
import { labelOf } from '../entry/entries.ts'
import { envelope, type Stamp } from '../entry/stamp.ts'
import { stampNow } from '../entry/this-device.ts'
import { Cautions } from '../parts/cautions.tsx'
import type { WrittenDown } from './line.tsx'

/** What is due beside the pours, a line each. */
export function DueLines({
  due,
  reader,
  wrote,
}: {
  due: readonly Due[]
  reader: Reader
  wrote(written: WrittenDown): void
}) {
  if (due.length === 0) return null
  return (
    <section aria-labelledby="also-due" class="also-due">
      <h2 id="also-due">Also due</h2>
      {due.map((one) => (
        <DueLine key={one.key} due={one} reader={reader} wrote={wrote} />
      ))}
    </section>
  )
}

function DueLine({ due, reader, wrote }: { due: Due; reader: Reader; wrote(written: WrittenDown): void }) {
  const [isBusy, setBusy] = useState(false)
  const { finish, name } = due
  const done = async () => {
    if (finish === null || isBusy) return
    setBusy(true)
    const entry = finishing(due, finish, stampNow())
    const sent = await write([{ entry, label: labelOf(entry, name, reader) }])
    setBusy(false)
    wrote({ name, entries: [entry], sent })
  }
  return (
    <article class="due-line" aria-label={due.headline}>
      <p class="headline">{due.headline}.</p>
      <p class="why">{due.why}</p>
      <Cautions cautions={due.cautions} />
      <div class="buttons">
        {finish !== null && (
          <button type="button" disabled={isBusy} onClick={() => void done()}>
            Done
          </button>
        )}
        <Link class="button plain" href={due.page}>
          Go there
        </Link>
      </div>
    </article>
  )
}

const finishing = ({ sump, about }: Due, finish: NonNullable<Due['finish']>, stamp: Stamp) =>
  ({
    ...envelope(stamp),
    ...(sump === null ? {} : { sump }),
    ...(about === null ? {} : { about }),
    ...finish,
  }) as unknown as Entry
