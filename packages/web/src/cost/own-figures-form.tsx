import { say } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import type { Book } from '../api/types.ts'
import { setupEntry } from '../entry/entries.ts'
import { stampNow } from '../entry/this-device.ts'
import { useWriting } from '../entry/use-writing.ts'
import { DayField } from '../fields/fields.tsx'
import { Figures } from '../fields/figures.tsx'
import { readTexts } from '../fields/read-texts.ts'
import type { Cost } from './cost-api.ts'
import { changedCosts, figureText, ownFigures, readFigure } from './own-figures.ts'

/** The shop's own figures: what is empty is not counted. A change counts from a day on; what was before stays. */
export function OwnFiguresForm({ book, cost, today }: { book: Book; cost: Cost; today: string }) {
  const { units } = book.shop
  const figures = ownFigures(cost, units)
  const stand = Object.fromEntries(figures.map((figure) => [figure.key, figureText(figure, units)]))
  const [typed, setTyped] = useState<Record<string, string>>({})
  const [since, setSince] = useState('')
  const { write, isBusy, said } = useWriting()
  const texts = { ...stand, ...typed }
  const { values, faults } = readTexts(
    texts,
    Object.fromEntries(figures.map((figure) => [figure.key, (text: string) => readFigure(text, figure, units)])),
    Object.fromEntries(figures.map(({ key, value }) => [key, { text: stand[key]!, value }])),
  )
  const change = changedCosts(figures, values)
  const from = since === '' ? today : since
  const isAhead = since > today
  const submit = async (event: Event) => {
    event.preventDefault()
    if (change === null || isAhead || Object.keys(faults).length > 0) return
    // A first figure needs no day: what nobody knew before has it too.
    const day = change.isFirst && since === '' ? undefined : from
    const entry = setupEntry({ kind: 'shop', id: 'shop' }, change.changes, change.was, stampNow(), day)
    if (await write([{ entry, label: say('What work and waste cost') }])) setTyped({})
  }
  return (
    <form class="own-figures" aria-label={say('The shop’s own figures')} noValidate onSubmit={submit}>
      <Figures
        fields={figures.map(({ key, label, hint, value }) => ({
          key,
          label,
          hint: value === null ? say('{hint}. Not set: not counted', { hint }) : hint,
        }))}
        texts={texts}
        faults={faults}
        change={(key, text) => setTyped({ ...typed, [key]: text })}
      >
        <DayField
          label={say('Counts from')}
          value={since}
          onInput={setSince}
          max={today}
          fault={isAhead ? { found: since, expected: say('a day up to today') } : null}
          hint={
            change?.isFirst === true
              ? say('Empty: also for what was before, which had no figure')
              : say('Empty: from today on; what was before keeps its figure')
          }
        />
      </Figures>
      <div class="buttons">
        <button type="submit" class="main" disabled={isBusy || change === null}>
          {say('Keep these figures')}
        </button>
      </div>
      <p class="quiet" role="status">
        {said}
      </p>
    </form>
  )
}
