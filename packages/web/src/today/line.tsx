import type { ClaimedPour } from '@sumpbook/book/today'
import { likelyReasons, message, recordedReason, say, sayReason } from '@sumpbook/fluid'
import { type ComponentChildren, Fragment } from 'preact'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import type { Condition, Entry, ShopOfBook, SumpItem } from '../api/types.ts'
import { BandLine } from '../band-line/band-line.tsx'
import { type Fate, useWaiting, write } from '../entry/book-outbox.ts'
import { isPour, labelOf, pouredAsWritten, skipEntry, voidEntry } from '../entry/entries.ts'
import type { Stamp } from '../entry/stamp.ts'
import { stampNow } from '../entry/this-device.ts'
import { TextField } from '../fields/fields.tsx'
import { Cautions } from '../parts/cautions.tsx'
import { ClaimLine } from '../parts/claim-line.tsx'
import { JobUnderWay } from '../parts/job-under-way.tsx'
import { readerOf } from '../say/units.ts'
import { sayWhen } from '../say/when.ts'
import { inTrueLitres } from '../standing/true-litres.ts'
import { isCounting } from '../standing/use-counted.ts'
import { NotPouredForm, OtherwiseForm } from './pour-forms.tsx'
import { type ListTime, PutOffForm, type Puttable } from './put-off.tsx'
import './line.css'

/** Why a sump is on the list, in one or two words; what the words are written on says "do" or "doubt". */
const tags: Record<Condition, readonly ['do' | 'doubt' | 'plain', string]> = {
  'below-suction': ['do', message('level at the pump')],
  'over-full': ['do', message('too full')],
  lean: ['do', message('lean')],
  rich: ['do', message('rich')],
  doubt: ['doubt', message('does not fit')],
  'low-level': ['do', message('level low')],
  'measure-first': ['doubt', message('measure first')],
  unread: ['doubt', message('not read lately')],
  'in-order': ['plain', message('in order')],
  'straight-oil': ['plain', message('straight oil')],
}

/** What the list says once something was written down here. */
export interface WrittenDown {
  name: string
  entries: readonly Entry[]
  sent: Fate
}

interface LineProps {
  /** On today's list, with who has claimed it and what job is under way. */
  item: SumpItem & Partial<Pick<ClaimedPour<unknown>, 'claimedBy' | 'job'>>
  shop: ShopOfBook
  /** RFC 3339: when the list was made. */
  at: string
  /** Its place in the list; null where it stands alone. */
  ordinal: number | null
  wrote(written: WrittenDown): void
  /** Cautions that stand before the whole list already. */
  said?: ReadonlySet<string>
  /** As a line of today's list, that may be put off; null of a sump's own page, and of what nobody puts off. */
  puttable?: { line: Puttable; time: ListTime } | null
}

type Open = 'otherwise' | 'not-poured' | 'aside' | 'put-off' | null

/** One sump that wants something: what, how, what comes of it, why, and what was done about it. */
export function TodayLine({ item, shop, at, ordinal, wrote, said, puttable = null }: LineProps) {
  const [open, setOpen] = useState<Open>(null)
  const [isBusy, setBusy] = useState(false)
  const waiting = useWaiting().some(({ entry }) => entry.sump === item.sump)
  const reader = readerOf(shop.units)
  const { words, recipe, bench, concentration, volume } = item
  // Where only the level is unknown, the other ways are the recipe: one look at the sump picks one.
  const isByLevel = recipe.because.includes('level-unknown')
  const inDoubt = readingInDoubt(item)
  const [kind, tag] = tags[item.condition] ?? ['plain', item.condition]

  const writeDown = async (build: (stamp: Stamp) => Entry[]) => {
    if (isBusy) return
    setBusy(true)
    const entries = build(stampNow())
    const sent = await write(entries.map((entry) => ({ entry, label: labelOf(entry, item.name, reader) })))
    setBusy(false)
    setOpen(null)
    wrote({ name: item.name, entries, sent })
  }

  return (
    <article class="line" aria-labelledby={`at-${item.sump}`}>
      {ordinal !== null && <div class="ordinal">{item.condition === 'doubt' ? '?' : ordinal}</div>}
      <div class="line-words">
        <header>
          <h3 id={`at-${item.sump}`}>
            <Link href={`/sumps/${encodeURIComponent(item.sump)}`}>{item.name}</Link>
          </h3>
          <span class={`tag ${kind}`}>{say(tag)}</span>
          <span class="place">{placeWords(item)}</span>
        </header>
        <p class="headline">{words.headline}.</p>
        {words.how !== '' && <p class="how">{words.how}</p>}
        {words.outcome !== '' && <p class="how">{words.outcome}</p>}
        <p class={item.doubts.length > 0 ? 'how' : 'why'}>
          {item.why}{' '}
          {item.dataAt !== null &&
            say('From the records of {when}.', { when: sayWhen(item.dataAt, { timeZone: shop.timeZone, now: at }) })}
        </p>
        <Cautions cautions={words.cautions.filter((caution) => said?.has(caution) !== true)} />
        {waiting && (
          <p class="note">
            {isCounting()
              ? say('Something about it is on this device only; it is counted here.')
              : say('Written on this device; it counts once it is sent.')}
          </p>
        )}
        {(!waiting || isCounting()) &&
          open === null &&
          (item.job != null ? (
            <JobUnderWay job={item.job} />
          ) : (
            <div class="buttons">
              <LineButtons
                item={item}
                isBusy={isBusy}
                open={setOpen}
                poured={() => void writeDown((stamp) => pouredAsWritten(item, item, reader, stamp))}
              />
              {item.claimedBy !== undefined && isPour(recipe) && (
                <ClaimLine
                  claimKey={`pour:${item.sump}`}
                  claim={item.claimedBy}
                  sump={item.sump}
                  name={item.name}
                  timeZone={shop.timeZone}
                  isBusy={isBusy}
                  write={(items) => void writeDown(() => items.map(({ entry }) => entry))}
                />
              )}
              {puttable !== null && (
                <button type="button" class="plain" onClick={() => setOpen('put-off')}>
                  {say('Put off')}
                </button>
              )}
            </div>
          ))}
        {open === 'otherwise' && (
          <OtherwiseForm
            item={item}
            sump={inTrueLitres(item)}
            units={shop.units}
            volume={volume?.mean ?? null}
            write={(build) => void writeDown(build)}
            cancel={() => setOpen(null)}
          />
        )}
        {open === 'not-poured' && (
          <NotPouredForm
            sump={item.name}
            write={(note) => void writeDown((stamp) => [skipEntry('not poured', note, item.sump, stamp)])}
            cancel={() => setOpen(null)}
          />
        )}
        {open === 'put-off' && puttable !== null && (
          <PutOffForm {...puttable} write={(build) => void writeDown(build)} cancel={() => setOpen(null)} />
        )}
        {open === 'aside' && inDoubt !== null && (
          <SetAsideForm
            what={say('the reading of {when}', { when: sayWhen(inDoubt.at, { timeZone: shop.timeZone, now: at }) })}
            reason={inDoubt.reason}
            write={(reason) => void writeDown((stamp) => [voidEntry(inDoubt.entry, reason, item.sump, stamp)])}
            cancel={() => setOpen(null)}
          />
        )}
        {item.alternatives.length > 0 && (
          <details open={isByLevel}>
            <summary>{isByLevel ? say('What it takes, by its level') : say('Other ways')}</summary>
            <ul class="ways">
              {item.alternatives.map((way) => (
                <li>{way}</li>
              ))}
            </ul>
          </details>
        )}
      </div>
      <div class="line-band">
        <BandLine
          band={bench.band}
          target={bench.target}
          now={concentration}
          after={isPour(recipe) ? (recipe.result?.concentration ?? null) : null}
          inAWeek={item.inAWeek?.concentration.mean ?? null}
        />
      </div>
    </article>
  )
}

interface ButtonsProps {
  item: SumpItem
  isBusy: boolean
  open(form: Open): void
  poured(): void
}

function LineButtons({ item, isBusy, open, poured }: ButtonsProps) {
  const read = (
    <Link class="button" href={`/round/${encodeURIComponent(item.sump)}`}>
      {say('Read it now')}
    </Link>
  )
  if (isPour(item.recipe)) {
    return (
      <>
        <button type="button" class="main" disabled={isBusy} onClick={poured}>
          {item.recipe.add === null ? say('Drawn off as written') : say('Poured as written')}
        </button>
        <button type="button" onClick={() => open('otherwise')}>
          {say('Otherwise')}
        </button>
        <button type="button" class="plain" onClick={() => open('not-poured')}>
          {item.recipe.add === null ? say('Not drawn off') : say('Not poured')}
        </button>
      </>
    )
  }
  switch (item.action) {
    case 'change':
      return (
        <>
          <p class="note">
            {say('This is a cleanout: drain, clean, rinse, fill. Write the new charge down when it is done.')}
          </p>
          <Link class="button" href={`/cleanouts/plan?sump=${encodeURIComponent(item.sump)}`}>
            {say('Plan the cleanout')}
          </Link>
          {read}
          <button type="button" class="plain" onClick={() => open('not-poured')}>
            {say('Not now')}
          </button>
        </>
      )
    case 'measure-first':
      if (item.doubts.length === 0) return read
      return (
        <>
          <Link class="button main" href={`/round/${encodeURIComponent(item.sump)}`}>
            {say('Read it again')}
          </Link>
          {readingInDoubt(item) !== null && (
            <button type="button" onClick={() => open('aside')}>
              {say('Set the reading aside')}
            </button>
          )}
          <Link class="button plain" href={`/sumps/${encodeURIComponent(item.sump)}#doubts`}>
            {say('What else it can be')}
          </Link>
        </>
      )
    case 'refuse':
      return null
    default:
      return read
  }
}

/** The one reading that does not fit; null where there is none, or where several do not. */
function readingInDoubt({ doubts }: Pick<SumpItem, 'doubts'>) {
  const [doubt] = doubts
  if (doubts.length !== 1 || doubt!.entry === null) return null
  return { entry: doubt!.entry, at: doubt!.at, reason: doubt!.kind === 'misread' ? 'misread' : '' }
}

/** Why an entry is set aside: it is asked for, since the record keeps it. */
export function SetAsideForm({
  what,
  reason: likely = '',
  write,
  cancel,
}: {
  what: string
  /** What the form begins with. */
  reason?: string
  write(reason: string): void
  cancel(): void
}) {
  const [reason, setReason] = useState(likely === '' ? '' : sayReason(likely))
  const [isTried, setTried] = useState(false)
  return (
    <form
      class="pour-form"
      aria-label={say('Set aside {what}', { what })}
      onSubmit={(event) => {
        event.preventDefault()
        setTried(true)
        if (reason.trim() !== '') write(recordedReason(reason.trim()))
      }}
    >
      <TextField
        label={say('Why is it set aside: {what}?', { what })}
        value={reason}
        onInput={setReason}
        list={likelyReasons.map((one) => say(one))}
        fault={
          isTried && reason.trim() === ''
            ? say('Found nothing; expected a reason: the record keeps it beside the entry.')
            : null
        }
      />
      <div class="buttons">
        <button type="submit" class="main">
          {say('Set it aside')}
        </button>
        <button type="button" class="plain" onClick={cancel}>
          {say('Back')}
        </button>
      </div>
    </form>
  )
}

export function placeWords({ place, fluid }: Pick<SumpItem, 'place' | 'fluid'>): ComponentChildren {
  const parts = [place ?? '', fluid.name].filter((part) => part !== '')
  return parts.map((part, i) => (
    <Fragment key={part}>
      {i > 0 && ' · '}
      {part}
    </Fragment>
  ))
}
