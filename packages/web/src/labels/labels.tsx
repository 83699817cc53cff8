import { say, sayNumber } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { useSumps } from '../api/queries.ts'
import type { Book, SumpNow } from '../api/types.ts'
import { SelectField, TextField } from '../fields/fields.tsx'
import { usePaper } from '../parts/use-paper.ts'
import { inWalkingOrder } from '../standing/walking-order.ts'
import { isLoopback, readLabelAddress } from './label-address.ts'
import { type LabelSheet, labelSheets, placeLabels, sayLabelSheet } from './label-sheets.ts'
import { labelWords } from './label-words.ts'
import { Qr } from './qr.tsx'
import './labels.css'

/** Labels for the sumps, on paper or on sheets of labels: a scan leads to the sump's stop of the round. */
export function Labels({ book }: { book: Book }) {
  const sumps = useSumps()
  const [sheetId, setSheet] = useState(book.shop.units === 'us' ? 'letter-2x5' : 'A4-2x4')
  const [skipped, setSkipped] = useState('0')
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set())
  const [address, setAddress] = useState(location.origin)
  const sheet = labelSheets.find(({ id }) => id === sheetId)!
  usePaper({ paper: sheet.paper, margin: 0 })
  if (sumps.data === undefined) {
    return sumps.error === null ? (
      <p class="quiet">{say('Fetching the sumps …')}</p>
    ) : (
      <p class="fault">{sumps.error.message}</p>
    )
  }
  const all = sumps.data.toSorted(inWalkingOrder)
  const chosen = all.filter(({ sump }) => !left.has(sump))
  const used = /^\d{1,3}$/.test(skipped.trim()) ? Number(skipped) : null
  const read = readLabelAddress(address)
  const addressFault =
    'fault' in read
      ? read.fault
      : isLoopback(read.origin)
        ? say('No phone comes to {address}: it means the very device that asks. Type the address that phones use.', {
            address: read.origin,
          })
        : null
  const pages = 'fault' in read ? [] : placeLabels(chosen, sheet, used ?? 0)
  const turn = (sump: string) => {
    const next = new Set(left)
    if (!next.delete(sump)) next.add(sump)
    setLeft(next)
  }
  return (
    <div class="labels">
      <div class="no-print">
        <div class="page-head">
          <h1>{say('Labels')}</h1>
          <span class="quiet">{say('{count, plural, one {# label} other {# labels}}', { count: chosen.length })}</span>
        </div>
        <p>
          {say(
            'Print at 100 %, without fitting to the page. A phone’s camera that reads the code opens the sump’s stop of the round.',
          )}
        </p>
        <div class="label-form">
          <TextField
            label={say('Address that phones use')}
            value={address}
            onInput={setAddress}
            hint={say('It stands in every code: a phone must be able to reach it.')}
            fault={addressFault}
          />
          <SelectField
            label={say('Sheet')}
            value={sheetId}
            onInput={setSheet}
            choices={labelSheets.map((one) => [one.id, sayLabelSheet(one)] as const)}
          />
          <TextField
            label={say('Labels of the first sheet that are used up')}
            value={skipped}
            onInput={setSkipped}
            numeric
            fault={
              used === null
                ? say('Found “{text}”; expected a whole number, 0 for a fresh sheet.', { text: skipped })
                : null
            }
          />
        </div>
        <fieldset class="label-choice">
          <legend>{say('Sumps')}</legend>
          {all.map(({ sump, name }) => (
            <label key={sump}>
              <input type="checkbox" checked={!left.has(sump)} onChange={() => turn(sump)} />
              {name}
            </label>
          ))}
        </fieldset>
        <div class="buttons">
          <button type="button" class="main" disabled={pages.length === 0} onClick={() => print()}>
            {say('Print')}
          </button>
        </div>
      </div>
      {pages.map((places, n) => (
        <section
          class={`label-page ${sheet.paper}`}
          aria-label={say('Sheet {number}', { number: sayNumber(n + 1, 0) })}
        >
          {places.map(({ item, left: x, top }) => (
            <Label
              key={item.sump}
              sump={item}
              origin={(read as { origin: string }).origin}
              sheet={sheet}
              left={x}
              top={top}
              shop={book.shop}
            />
          ))}
        </section>
      ))}
    </div>
  )
}

interface LabelProps {
  sump: SumpNow
  /** Where the book is, for the code. */
  origin: string
  sheet: LabelSheet
  left: number
  top: number
  shop: Book['shop']
}

function Label({ sump, origin, sheet, left, top, shop }: LabelProps) {
  const words = labelWords(sump, shop.units)
  const address = new URL(`/round/${encodeURIComponent(sump.sump)}`, origin).href
  const mm = (length: number) => `${length}mm`
  return (
    <article
      class={sheet.height > 90 ? 'label large' : 'label'}
      style={{
        left: mm(left),
        top: mm(top),
        width: mm(sheet.width),
        height: mm(sheet.height),
        fontSize: mm(Math.min(sheet.height / 21, sheet.width / 32, 5.5)),
        '--code': mm(Math.min(0.4 * sheet.height, 55)),
      }}
      aria-label={say('Label of {sump}', { sump: words.name })}
    >
      <div class="label-words">
        <h2>{words.name}</h2>
        <p class="label-place">{[words.place, shop.name].filter((part) => part !== '').join(' · ')}</p>
        <dl>
          {words.lines.map(({ term, words: said }) => (
            <div>
              <dt>{term}</dt>
              <dd class={said === null ? 'by-hand' : ''}>{said ?? ''}</dd>
            </div>
          ))}
        </dl>
      </div>
      <div class="label-code">
        <Qr text={address} label={say('Code of {sump}', { sump: words.name })} />
        <span class="code">{sump.sump}</span>
      </div>
      <p class="label-foot">{say('Label and safety data sheet of the fluid come first.')}</p>
    </article>
  )
}
