import { say, sayChance, sayStory } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import type { Book, DoubtAnswer, Entry, Outlook, SumpNow } from '../api/types.ts'
import { verdictEntry, voidEntry } from '../entry/entries.ts'
import type { Stamp } from '../entry/stamp.ts'
import { readerOf } from '../say/units.ts'
import { sayWhen } from '../say/when.ts'
import { SetAsideForm } from '../today/line.tsx'
import { draftOf, type Story, storiesOf } from './answers.ts'
import { MissingForm } from './missing-form.tsx'
import './doubts.css'

interface DoubtsProps {
  outlook: Outlook
  sump: SumpNow
  book: Book
  isBusy: boolean
  write(build: (stamp: Stamp) => Entry[]): void
}

/** The records that do not fit: what was found, the likely story, and what to do; to read again always comes first. */
export function Doubts({ outlook, ...props }: DoubtsProps) {
  const open = outlook.doubts.filter((doubt) => doubt.open)
  if (open.length === 0) return null
  return (
    <section aria-labelledby="doubts" class="part doubts">
      <h2 id="doubts">{say('Does not fit')}</h2>
      {open.map((doubt) => (
        <Doubt key={keyOf(doubt)} doubt={doubt} outlook={outlook} {...props} />
      ))}
    </section>
  )
}

/** Records that did not fit and that later readings have settled, youngest first: somebody may know better still. */
export function SettledDoubts({ outlook, ...props }: DoubtsProps) {
  const settled = outlook.doubts.filter((doubt) => !doubt.open).toReversed()
  if (settled.length === 0) return null
  return (
    <section aria-labelledby="settled" class="part doubts">
      <h2 id="settled">{say('Did not fit')}</h2>
      <details>
        <summary>
          {say(
            '{count, plural, one {One record that later readings have settled} other {# records that later readings have settled}}',
            {
              count: settled.length,
            },
          )}
        </summary>
        {settled.map((doubt) => (
          <Doubt key={keyOf(doubt)} doubt={doubt} outlook={outlook} {...props} />
        ))}
      </details>
    </section>
  )
}

const keyOf = ({ kind, entries }: DoubtAnswer) => `${kind} ${entries.join(' ')}`

type Form = { of: 'aside'; reason: string } | { of: 'entry'; story: Story } | null

function Doubt({ doubt, outlook, sump, book, isBusy, write }: DoubtsProps & { doubt: DoubtAnswer }) {
  const [form, setForm] = useState<Form>(null)
  const { shop } = book
  const reader = readerOf(shop.units)
  const [likeliest, ...others] = storiesOf(doubt)
  const when = sayWhen(doubt.at, { timeZone: shop.timeZone, now: outlook.at })
  const verdict = (answer: string) => write((stamp) => [verdictEntry(doubt.entries, answer, sump.sump, stamp)])
  const settle = (story: Story) => {
    const { settling } = story
    if (settling.by === 'verdict') verdict(story.kind)
    else setForm(settling.by === 'aside' ? { of: 'aside', reason: settling.reason } : { of: 'entry', story })
  }
  return (
    <article class="doubt-item" aria-label={say('Doubt of {when}', { when })}>
      <p>{doubt.text}</p>
      <p class="quiet">
        {when} · {sayStory({ kind: doubt.kind, volume: doubt.volume }, reader)}: {sayChance(doubt.probability)}
      </p>
      {form === null && (
        <div class="buttons">
          <Link class="button main" href={`/round/${encodeURIComponent(sump.sump)}`}>
            {say('Read it again')}
          </Link>
          <SettleButton story={likeliest!} isBusy={isBusy} settle={settle} />
          <button type="button" disabled={isBusy} onClick={() => verdict('stands')}>
            {say('The records are right')}
          </button>
        </div>
      )}
      {form?.of === 'aside' && doubt.entry !== null && (
        <SetAsideForm
          what={say('the reading of {when}', { when })}
          reason={form.reason}
          write={(reason) => write((stamp) => [voidEntry(doubt.entry!, reason, sump.sump, stamp)])}
          cancel={() => setForm(null)}
        />
      )}
      {form?.of === 'entry' && (
        <MissingForm
          draft={draftOf(form.story, doubt, outlook.entries)}
          sump={sump}
          shop={shop}
          isBusy={isBusy}
          write={(build) => write((stamp) => [build(stamp)])}
          cancel={() => setForm(null)}
        />
      )}
      {form === null && others.length > 0 && (
        <details>
          <summary>{say('It was something else')}</summary>
          <ul class="stories">
            {others.map((story) => (
              <li key={story.kind}>
                <span>
                  {sayStory(story, reader)} <span class="quiet">({sayChance(story.probability)})</span>
                </span>
                <SettleButton story={story} isBusy={isBusy} settle={settle} />
              </li>
            ))}
          </ul>
        </details>
      )}
    </article>
  )
}

function SettleButton({ story, isBusy, settle }: { story: Story; isBusy: boolean; settle(story: Story): void }) {
  const { settling } = story
  const words =
    settling.by === 'aside'
      ? say('Set the reading aside')
      : settling.by === 'entry'
        ? say('Write the missing entry')
        : say(settling.words)
  return (
    <button type="button" disabled={isBusy} onClick={() => settle(story)}>
      {words}
    </button>
  )
}
