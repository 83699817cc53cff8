import { lowerFirst, type PlannedDay, say, sayOtherWater, sayPlannedDay, sayStrength } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { useOtherWater, usePlan } from '../api/queries.ts'
import type { Book, Thing } from '../api/types.ts'
import { DayField, SelectField, TextField } from '../fields/fields.tsx'
import { readPercent } from '../fields/read.ts'
import { readerOf } from '../say/units.ts'
import { figureOfWater } from '../water/analyses.ts'

/** Other ways to keep a sump from now on, and another water in its past: asked, not drawn unasked. */
export function WhatIf({ book, sump, today }: { book: Book; sump: string; today: string }) {
  const [isOpen, setOpen] = useState(false)
  if (book.waters.length === 0) return null
  return (
    <section aria-labelledby="what-if" class="part">
      <h2 id="what-if">{say('What if')}</h2>
      {isOpen ? (
        <div class="two-parts">
          <FromNow book={book} sump={sump} />
          <HadItBeen book={book} sump={sump} today={today} />
        </div>
      ) : (
        <button type="button" class="plain" onClick={() => setOpen(true)}>
          {say('Try another water or strength')}
        </button>
      )}
    </section>
  )
}

const choicesOf = ({ waters }: Book) => waters.map(({ id, name }) => [id, name] as const)
const softest = ({ waters }: Book) => waters.toSorted((a, b) => hardnessOf(a) - hardnessOf(b))[0]!.id
const hardnessOf = (water: Thing) => figureOfWater(water, 'hardness') ?? Number.POSITIVE_INFINITY

function FromNow({ book, sump }: { book: Book; sump: string }) {
  const reader = readerOf(book.shop.units)
  const [water, setWater] = useState(softest(book))
  const [text, setText] = useState('')
  const read = readPercent(text)
  const plan = usePlan(sump, { water, strength: 'value' in read ? read.value : null })
  return (
    <div>
      <h3>{say('From now on')}</h3>
      <p class="quiet">{say('Filled to the mark every week, first today.')}</p>
      <SelectField label={say('Water')} value={water} onInput={setWater} choices={choicesOf(book)} />
      <TextField
        label={say('Poured at, %')}
        value={text}
        onInput={setText}
        hint={say('Empty: what holds the target')}
        fault={'fault' in read ? read.fault : null}
        numeric
      />
      <div role="status">
        {plan.data !== undefined && (
          <>
            <p>{say('Poured at {strength}:', { strength: sayStrength(plan.data.strength, reader) })}</p>
            <ul>
              {plan.data.ahead.map((day: PlannedDay) => (
                <li>{sayPlannedDay(day, reader)}</li>
              ))}
            </ul>
          </>
        )}
        {plan.error !== null && <p class="fault">{plan.error.message}</p>}
      </div>
    </div>
  )
}

function HadItBeen({ book, sump, today }: { book: Book; sump: string; today: string }) {
  const reader = readerOf(book.shop.units)
  const [water, setWater] = useState(softest(book))
  const [since, setSince] = useState(`${today.slice(0, 4)}-01-01`)
  const other = useOtherWater(sump, { water, since })
  const hardness = other.data?.minerals?.hardness
  const name = book.waters.find(({ id }) => id === water)?.name ?? water
  return (
    <div>
      <h3>{say('Had it been')}</h3>
      <p class="quiet">{say('The same pours with another water.')}</p>
      <SelectField label={say('Water')} value={water} onInput={setWater} choices={choicesOf(book)} />
      <DayField label={say('Since')} value={since} onInput={setSince} max={today.slice(0, 10)} />
      <div role="status">
        {hardness !== undefined && <p>{sayOtherWater(hardness, lowerFirst(name), reader)}</p>}
        {other.error !== null && <p class="fault">{other.error.message}</p>}
      </div>
    </div>
  )
}
