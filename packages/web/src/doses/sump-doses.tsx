import { type DoseAnswer, doseFault, measuredUnit, say, sayDoseAmount, sayDoseFault } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import type { Book } from '../api/types.ts'
import { doseEntry, labelOf } from '../entry/entries.ts'
import { useWriting } from '../entry/use-writing.ts'
import { TextField } from '../fields/fields.tsx'
import { Cautions } from '../parts/cautions.tsx'
import { Said } from '../say/said.tsx'
import { readerOf } from '../say/units.ts'
import { dayIn, sayWhenShort } from '../say/when.ts'
import type { SmallField } from '../stock/form-fields.ts'
import { SmallForm } from '../stock/small-form.tsx'
import { type DoseLine, useDoses } from './answers.ts'
import './doses.css'

/** What a sump may be given of the shop's additives, by their labels. */
export function SumpDoses({ book, sump, name, now }: { book: Book; sump: string; name: string; now: string }) {
  const [cause, setCause] = useState('')
  const [said, setSaid] = useState('')
  const answer = useDoses(sump, said)
  const { data } = answer
  return (
    <section aria-labelledby="additives" class="part doses">
      <h2 id="additives">{say('Additives')}</h2>
      {data === undefined && (
        <p class="quiet">{answer.error === null ? say('Looking them up …') : answer.error.message}</p>
      )}
      {data !== undefined && data.doses.length === 0 && (
        <p class="quiet">
          <Said
            text="The shop has typed in no additive. <page>Type one from its label</page>"
            parts={{ page: (inside) => <Link href="/shop/additives">{inside}</Link> }}
          />
        </p>
      )}
      {data !== undefined && data.doses.length > 0 && (data.isFallUnexplained || said !== '') && (
        <form
          class="dose-cause"
          aria-label={say('Why its pH falls')}
          onSubmit={(event) => {
            event.preventDefault()
            setSaid(cause.trim())
          }}
        >
          <TextField
            label={say('Its pH has fallen. What is behind it, once that is known?')}
            value={cause}
            onInput={setCause}
            list={[
              say('growth, by a slide'),
              say('too weak, by two methods'),
              say('cleaner or acid carried in'),
              say('other fluid carried in'),
            ]}
          />
          <button type="submit" disabled={cause.trim() === said}>
            {say('That is the cause')}
          </button>
        </form>
      )}
      {data?.doses.map((line) => (
        <DoseOf key={line.additive.id} line={line} book={book} sump={sump} name={name} now={now} cause={said} />
      ))}
    </section>
  )
}

interface DoseProps {
  line: DoseLine
  book: Book
  sump: string
  name: string
  now: string
  cause: string
}

function DoseOf({ line, book: { shop }, sump, name, now, cause }: DoseProps) {
  const [isOpen, setOpen] = useState(false)
  const writing = useWriting()
  const reader = readerOf(shop.units)
  const { additive, answer, words, given, contradictions, unit, mayGive } = line
  const [last] = given
  return (
    <article class="dose" aria-label={additive.name}>
      <p class="headline">{words.headline}.</p>
      <p class="why">
        {additive.name}: {words.why}{' '}
        {last !== undefined &&
          (last.amount === null
            ? say('Last given {when}, not measured.', { when: sayWhenShort(last.at, { timeZone: shop.timeZone, now }) })
            : say('Last given {when}: {amount}.', {
                when: sayWhenShort(last.at, { timeZone: shop.timeZone, now }),
                amount: sayDoseAmount(last.amount, unit, 'near', reader),
              }))}
      </p>
      {contradictions.map(({ entry, text }) => (
        <p key={entry} class="doubt">
          {text}
        </p>
      ))}
      <Cautions cautions={words.cautions} />
      <p role="status">{writing.said}</p>
      {answer.outcome === 'dose' &&
        (mayGive ? (
          isOpen ? (
            <DoseForm
              line={line}
              answer={answer}
              units={shop.units}
              today={dayIn(now, shop.timeZone)}
              cause={cause}
              isBusy={writing.isBusy}
              sump={sump}
              cancel={() => setOpen(false)}
              write={(entries) =>
                void writing
                  .write(entries.map((entry) => ({ entry, label: labelOf(entry, name, reader) })))
                  .then((isDone) => isDone && setOpen(false))
              }
            />
          ) : (
            <div class="buttons">
              <button type="button" onClick={() => setOpen(true)}>
                {say('It went in')}
              </button>
            </div>
          )
        ) : (
          <p class="note">
            {additive.who === 'owner'
              ? say('An owner gives it. You see what it would be.')
              : say('A keeper gives it. You see what it would be.')}
          </p>
        ))}
    </article>
  )
}

function DoseForm({
  line: { additive, unit },
  answer,
  units,
  today,
  cause,
  isBusy,
  sump,
  write,
  cancel,
}: {
  line: DoseLine
  answer: Extract<DoseAnswer, { outcome: 'dose' }>
  units: Book['shop']['units']
  today: string
  cause: string
  isBusy: boolean
  sump: string
  write: Parameters<typeof SmallForm>[0]['write']
  cancel(): void
}) {
  const { word, size } = measuredUnit(unit, units)
  const fields: SmallField[] = [
    { key: 'amount', label: say('How much went in, in {unit}', { unit: word }), kind: 'number', required: true },
    { key: 'reason', label: say('What for'), kind: 'text', required: true },
  ]
  return (
    <SmallForm
      title={say('A dose of {name}', { name: additive.name })}
      fields={fields}
      first={{ reason: cause }}
      units={units}
      today={today}
      submitWords={say('Write it down')}
      isBusy={isBusy}
      fault={({ numbers: { amount } }) =>
        amount != null && doseFault(amount * size, answer) !== null
          ? sayDoseFault(amount * size, answer, unit, readerOf(units))
          : null
      }
      build={({ numbers, texts }, stamp) => [
        doseEntry(
          {
            additive,
            unit,
            amount: (numbers.amount ?? 0) * size,
            reason: texts.reason ?? '',
            typed: `${numbers.amount} ${word}`,
          },
          sump,
          stamp,
        ),
      ]}
      write={write}
      cancel={cancel}
    />
  )
}
