import { lowerFirst, type PlannedDay, say, sayOtherWater, sayPlannedDay, sayStrength } from '@sumpbook/fluid'
import { useEffect, useState } from 'preact/hooks'
import { useOtherWater, usePlan } from '../api/queries.ts'
import type { Book, Thing } from '../api/types.ts'
import { DayField, SelectField } from '../fields/fields.tsx'
import { SliderField } from '../fields/slider-field.tsx'
import { readerOf } from '../say/units.ts'
import { figureOfWater } from '../water/analyses.ts'

interface WhatIfProps {
  book: Book
  sump: string
  /** The strongest mix that is poured there, %. */
  strongest: number
  today: string
}

/** Other ways to keep a sump from now on, and another water in its past: asked, not drawn unasked. */
export function WhatIf({ book, sump, strongest, today }: WhatIfProps) {
  const [isOpen, setOpen] = useState(false)
  if (book.waters.length === 0) return null
  return (
    <section aria-labelledby="what-if" class="part">
      <h2 id="what-if">{say('What if')}</h2>
      {isOpen ? (
        <div class="two-parts">
          <FromNow book={book} sump={sump} strongest={strongest} />
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

/** Days between fills that can be tried; a week until somebody slides. */
const fills = { least: 1, most: 28, usual: 7 }
/** A finger that slides is not asked after at every hair's breadth, ms. */
const restsFor = 150

function FromNow({ book, sump, strongest }: { book: Book; sump: string; strongest: number }) {
  const reader = readerOf(book.shop.units)
  const [water, setWater] = useState(softest(book))
  const [strength, setStrength] = useState<number | null>(null)
  const [every, setEvery] = useState(fills.usual)
  const plan = usePlan(sump, useAtRest({ water, strength, every }))
  // Until it is known what holds the target there is nothing to slide away from.
  const poured = strength ?? plan.data?.strength ?? null
  return (
    <div>
      <h3>{say('From now on')}</h3>
      <p class="quiet">
        {say(
          '{days, plural, =1 {Filled to the mark every day, first today.} other {Filled to the mark every # days, first today.}}',
          { days: every },
        )}
      </p>
      <SelectField label={say('Water')} value={water} onInput={setWater} choices={choicesOf(book)} />
      {poured !== null && (
        <>
          <SliderField
            label={say('Poured at')}
            value={poured}
            says={sayStrength(poured, reader)}
            min={0}
            max={Math.max(strongest, Math.ceil(poured))}
            step={0.1}
            onSlide={setStrength}
          />
          {strength === null ? (
            <p class="hint">{say('This holds the target.')}</p>
          ) : (
            <button type="button" class="plain" onClick={() => setStrength(null)}>
              {say('Back to what holds the target')}
            </button>
          )}
        </>
      )}
      <SliderField
        label={say('Between two fills')}
        value={every}
        says={say('{days, plural, =1 {a day} other {# days}}', { days: every })}
        min={fills.least}
        max={fills.most}
        step={1}
        onSlide={setEvery}
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

/** A value once it has not changed for a moment. */
function useAtRest<Value extends object>(value: Value): Value {
  const [atRest, setAtRest] = useState(value)
  const key = JSON.stringify(value)
  useEffect(() => {
    const timer = setTimeout(() => setAtRest(JSON.parse(key) as Value), restsFor)
    return () => clearTimeout(timer)
  }, [key])
  return atRest
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
