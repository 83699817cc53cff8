import { message, say } from '@sumpbook/fluid'
import { useEffect, useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import { Refusal } from '../api/client.ts'
import { pastAtFirst, useOutlook, useSump } from '../api/queries.ts'
import type { Book, Entry, Outlook, SumpPage } from '../api/types.ts'
import { SumpDoses } from '../doses/sump-doses.tsx'
import { Doubts, SettledDoubts } from '../doubts/doubts.tsx'
import { useWaiting } from '../entry/book-outbox.ts'
import { labelOf } from '../entry/entries.ts'
import type { Stamp } from '../entry/stamp.ts'
import { stampNow } from '../entry/this-device.ts'
import { useWriting } from '../entry/use-writing.ts'
import { Gradually } from '../parts/gradually.tsx'
import { readerOf } from '../say/units.ts'
import { SumpTests } from '../tests/sump-tests.tsx'
import { ConcentrationPart } from './concentration-part.tsx'
import { DueHere } from './due-here.tsx'
import { type Jump, Jumps } from './jumps.tsx'
import { Known } from './known.tsx'
import { MineralsPart } from './minerals-part.tsx'
import { NextPart } from './next-part.tsx'
import { StandingNow } from './standing-now.tsx'
import { SumpCost } from './sump-cost.tsx'
import { SumpJournal } from './sump-journal.tsx'
import { WhatIf } from './what-if.tsx'
import './sumps.css'

/**
 * One sump, in the order a person asks: where it stands and what to do next, what does not fit, what else is due here, how it got there and
 * where it goes, its tests, doses and cost, every entry about it, and how it is set up.
 */
export function Sump({ book, id }: { book: Book; id: string }) {
  const answer = useSump(id)
  const [days, setDays] = useState(pastAtFirst)
  const outlook = useOutlook(id, days)
  if (answer.data === undefined) {
    if (answer.error === null) return <p class="quiet">{say('Looking it up …')}</p>
    const isUnknown = answer.error instanceof Refusal && answer.error.status === 404
    return (
      <p class="fault">{isUnknown ? say('No sump of this book has the id “{id}”.', { id }) : answer.error.message}</p>
    )
  }
  return <SumpOf book={book} sump={answer.data} outlook={outlook.data ?? null} days={days} setDays={setDays} />
}

interface SumpOfProps {
  book: Book
  sump: SumpPage
  outlook: Outlook | null
  days: number
  setDays(days: number): void
}

function SumpOf({ book, sump, outlook, days, setDays }: SumpOfProps) {
  const { shop } = book
  const now = sump.asOf
  const reader = readerOf(shop.units)
  const writing = useWriting()
  const waiting = useWaiting().some(({ entry }) => entry.sump === sump.sump)
  useEffect(() => {
    // The part that an address names is there only once the answers are.
    if (outlook !== null && location.hash === '#doubts') document.getElementById('doubts')?.scrollIntoView()
  }, [outlook === null])
  const writeDown = (build: (stamp: Stamp) => Entry[]) =>
    void writing.write(build(stampNow()).map((entry) => ({ entry, label: labelOf(entry, sump.name, reader) })))
  const isOil = sump.bench.class === 'straight-oil'
  const doubts = outlook === null || isOil ? null : { outlook, sump, book, isBusy: writing.isBusy, write: writeDown }
  const place = { book, sump: sump.sump, name: sump.name, now }
  return (
    <div class="sump-page">
      <div class="page-head">
        <h1>{sump.name}</h1>
        <span class="quiet">{[sump.place ?? '', sump.fluid.name].filter((part) => part !== '').join(' · ')}</span>
      </div>
      <Gradually>
        <StandingNow sump={sump} units={shop.units} />
        {waiting && (
          <p class="note">
            {say(
              'Something about it is on this device only: it is counted above, and in the days ahead once it is sent.',
            )}
          </p>
        )}
        <p role="status" class="said">
          {writing.said}
        </p>
        <Jumps jumps={isOil ? jumpsOfOil : jumps} />
        <NextPart sump={sump} shop={shop} now={now} />
        {doubts !== null && <Doubts {...doubts} />}
        <p class="to-why no-print">
          <Link class="button" href={`/sumps/${encodeURIComponent(sump.sump)}/why`}>
            {say('Something wrong with it?')}
          </Link>
          <Link class="button plain" href={`/cleanouts/plan?sump=${encodeURIComponent(sump.sump)}`}>
            {say('Plan a cleanout')}
          </Link>
        </p>
        <DueHere sump={sump.sump} shop={shop} />
        {!isOil && (
          <ConcentrationPart
            sump={sump}
            outlook={outlook}
            timeZone={shop.timeZone}
            units={shop.units}
            days={days}
            setDays={setDays}
          />
        )}
        {!isOil && <WhatIf book={book} sump={sump.sump} strongest={sump.bench.maxStrength} today={now} />}
        {!isOil && outlook !== null && sump.history.length > 0 && (
          <MineralsPart sump={sump} outlook={outlook} shop={shop} days={days} />
        )}
        {!isOil && <SumpTests {...place} />}
        {!isOil && <SumpDoses {...place} />}
        <SumpCost sump={sump.sump} shop={shop} now={now} />
        {doubts !== null && <SettledDoubts {...doubts} />}
        <section aria-labelledby="sump-journal" class="part">
          <SumpJournal sump={sump} book={book} now={now} />
        </section>
        <section aria-labelledby="known" class="part">
          <h2 id="known">{say('What is known of it')}</h2>
          <Known sump={sump} book={book} />
        </section>
      </Gradually>
    </div>
  )
}

const jumpsOfOil: readonly Jump[] = [
  { id: 'cost', name: message('Cost') },
  { id: 'sump-journal', name: message('Journal') },
  { id: 'known', name: message('Set-up') },
]
const jumps: readonly Jump[] = [
  { id: 'concentration', name: message('Concentration') },
  { id: 'minerals', name: message('Minerals') },
  { id: 'tests', name: message('Tests') },
  { id: 'limits', name: message('Limits') },
  { id: 'additives', name: message('Additives') },
  ...jumpsOfOil,
]
