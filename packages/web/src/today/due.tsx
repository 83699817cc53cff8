import type { Claimed } from '@sumpbook/book/today'
import { type Reader, say } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import type { Due, Entry, TodayDue } from '../api/types.ts'
import { write } from '../entry/book-outbox.ts'
import { labelOf } from '../entry/entries.ts'
import { envelope, type Stamp } from '../entry/stamp.ts'
import { stampNow } from '../entry/this-device.ts'
import { Cautions } from '../parts/cautions.tsx'
import { ClaimLine } from '../parts/claim-line.tsx'
import { sayWhenShort } from '../say/when.ts'
import { FoldedLine, fewLines } from './folded-line.tsx'
import type { WrittenDown } from './line.tsx'
import { type ListTime, PutOffForm } from './put-off.tsx'

type LinesProps = { due: readonly Claimed<TodayDue>[] } & Omit<DueLineProps, 'due'>

/** What goes before every pour, a line each. */
export function AtOnceLines({ due: all, ...line }: LinesProps) {
  const due = all.filter(({ atOnce }) => atOnce)
  if (due.length === 0) return null
  return (
    <section aria-labelledby="at-once" class="at-once">
      <h2 id="at-once">{say('At once')}</h2>
      {due.map((one) => (
        <DueLine key={one.key} due={one} {...line} />
      ))}
    </section>
  )
}

/** What else is due beside the pours, a line each. */
export function DueLines({ due: all, ...line }: LinesProps) {
  const due = all.filter(({ atOnce }) => !atOnce)
  if (due.length === 0) return null
  // What is no news is folded where the list is long.
  const isLong = due.length > fewLines
  const shown = due.filter(({ isNew, exempt }) => !isLong || isNew || exempt)
  const folded = due.filter((one) => !shown.includes(one))
  return (
    <section aria-labelledby="also-due" class="also-due">
      <h2 id="also-due">{say('Also due')}</h2>
      {shown.map((one) => (
        <DueLine key={one.key} due={one} {...line} />
      ))}
      {folded.map((one) => (
        <FoldedLine
          key={one.key}
          name={one.headline}
          headline=""
          since={sayWhenShort(one.since, { timeZone: line.time.timeZone, now: line.time.at }).replace(' 00:00', '')}
        >
          <DueLine due={one} {...line} />
        </FoldedLine>
      ))}
    </section>
  )
}

interface DueLineProps {
  due: Claimed<TodayDue>
  reader: Reader
  time: ListTime
  wrote(written: WrittenDown): void
}

/** One duty: what to do, why, and what was done about it. */
export function DueLine({ due, reader, time, wrote }: DueLineProps) {
  const [isBusy, setBusy] = useState(false)
  const [isPutOff, setPutOff] = useState(false)
  const { finish, name } = due
  const writeDown = async (build: (stamp: Stamp) => Entry[]) => {
    if (isBusy) return
    setBusy(true)
    const entries = build(stampNow())
    const sent = await write(entries.map((entry) => ({ entry, label: labelOf(entry, name, reader) })))
    setBusy(false)
    setPutOff(false)
    wrote({ name, entries, sent })
  }
  return (
    <article class="due-line" aria-label={due.headline}>
      <p class="headline">{due.headline}.</p>
      <p class="why">{due.why}</p>
      <Cautions cautions={due.cautions} />
      <div class="buttons">
        {finish !== null && (
          <button
            type="button"
            disabled={isBusy}
            onClick={() => void writeDown((stamp) => [finishing(due, finish, stamp)])}
          >
            {say('Done')}
          </button>
        )}
        <Link class="button plain" href={due.page}>
          {say('Go there')}
        </Link>
        <ClaimLine
          claimKey={due.key}
          claim={due.claimedBy}
          sump={due.sump}
          name={name}
          timeZone={time.timeZone}
          isBusy={isBusy}
          write={(items) => void writeDown(() => items.map(({ entry }) => entry))}
        />
        {!due.exempt && (
          <button type="button" class="plain" onClick={() => setPutOff(true)}>
            {say('Put off')}
          </button>
        )}
      </div>
      {isPutOff && (
        <PutOffForm line={due} time={time} write={(build) => void writeDown(build)} cancel={() => setPutOff(false)} />
      )}
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
