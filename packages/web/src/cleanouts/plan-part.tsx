import { useState } from 'preact/hooks'
import { Link, useLocation, useSearch } from 'wouter-preact'
import { Refusal } from '../api/client.ts'
import { useSumps } from '../api/queries.ts'
import type { Book } from '../api/types.ts'
import { stampNow } from '../entry/this-device.ts'
import { useWriting } from '../entry/use-writing.ts'
import { DayField, SelectField, Taps, TextField } from '../fields/fields.tsx'
import { Figures } from '../fields/figures.tsx'
import { type FieldRead, readLitres, readPercent, readPlain } from '../fields/read.ts'
import { readTexts } from '../fields/read-texts.ts'
import { fieldVolume, sayMoney, shopUnits } from '../say/units.ts'
import { Asking } from './asking.tsx'
import { type CleanoutPlan, useCleanoutPlan } from './asks.ts'
import { PlannedSteps } from './planned-steps.tsx'
import { openingEntry } from './step-entries.ts'

type Key = 'volume' | 'heldBack' | 'target' | 'cleanerPercent' | 'hours' | 'rinsePercent' | 'rinseFraction' | 'rinses'

const empty: Record<Key, string> = {
  volume: '',
  heldBack: '',
  target: '',
  cleanerPercent: '',
  hours: '',
  rinsePercent: '',
  rinseFraction: '',
  rinses: '',
}

/** A cleanout before it is begun: what it takes by what the book knows, changed as one likes, and opened as a job. */
export function PlanPart({ book }: { book: Book }) {
  const [, go] = useLocation()
  const asked = new URLSearchParams(useSearch()).get('sump') ?? ''
  const sumps = useSumps().data ?? []
  const [picked, setPicked] = useState('')
  const [texts, setTexts] = useState(empty)
  const [choices, setChoices] = useState({ fluid: '', water: '', cleaner: '', solids: '', foul: '', on: '' })
  const writing = useWriting()
  const { units } = book.shop
  const sump = picked || asked || (sumps[0]?.sump ?? '')
  const { values, faults } = readTexts(texts, readersFor(units))
  const fields = {
    ...Object.fromEntries(Object.entries(values).map(([key, value]) => [key, value === null ? '' : String(value)])),
    ...choices,
  }
  const plan = useCleanoutPlan(sump, fields)
  const refused = plan.error instanceof Refusal ? (plan.error.problem.errors ?? []) : []
  const faultAt = { ...faults, ...Object.fromEntries(refused.map((fault) => [fault.pointer.slice(1), fault])) }
  const open = async () => {
    if (plan.data === undefined) return
    const entry = openingEntry(plan.data.opening, stampNow())
    if (await writing.write([{ entry, label: plan.data.title }])) go(`/cleanouts/sheet/${entry.id}`)
  }
  const choose = (key: keyof typeof choices) => (text: string) => setChoices({ ...choices, [key]: text })
  return (
    <>
      <p class="intro">
        Skim, drain, chips out, clean, rinse, fill: with the litres of this sump, what stays in its corners reckoned in.
        What you leave empty is taken from the book, or as the trade does it.
      </p>
      <div class="tool">
        <div class="tool-fields">
          <SelectField
            label="Sump"
            value={sump}
            onInput={setPicked}
            choices={sumps.map(({ sump: id, name }) => [id, name] as const)}
          />
          <DayField
            label="Planned for"
            value={choices.on}
            onInput={choose('on')}
            hint="Today reminds you on that day"
          />
          <Figures
            fields={figuresFor(units, plan.data)}
            texts={texts}
            faults={faultAt}
            change={(key, text) => setTexts({ ...texts, [key]: text })}
          />
        </div>
        <section class="answer" aria-label="What it takes">
          {plan.data === undefined ? (
            <PlanMissing error={plan.error} isRefused={refused.length > 0} />
          ) : (
            <PlanAnswer plan={plan.data} isBusy={writing.isBusy} said={writing.said} open={() => void open()} />
          )}
        </section>
        <details class="more">
          <summary>Another fluid, water, cleaner, sludge</summary>
          <div class="tool-fields">
            <SelectField
              label="Fluid that comes in"
              value={choices.fluid}
              onInput={choose('fluid')}
              choices={[['', 'The same as now'] as const, ...book.fluids.map(({ id, name }) => [id, name] as const)]}
            />
            <SelectField
              label="Water of the fresh charge"
              value={choices.water}
              onInput={choose('water')}
              choices={[['', 'What suits it'] as const, ...book.waters.map(({ id, name }) => [id, name] as const)]}
            />
            <TextField label="Cleaner, by name" value={choices.cleaner} onInput={choose('cleaner')} />
            <Taps
              legend="Chips and sludge in it"
              name="solids"
              value={choices.solids}
              choices={[
                ['', 'Not looked'],
                ['little', 'Little'],
                ['much', 'Much'],
              ]}
              onPick={choose('solids')}
            />
            <Taps
              legend="Foul: smell, slime, heavy growth"
              name="foul"
              value={choices.foul}
              choices={[
                ['', 'Not looked'],
                ['false', 'No'],
                ['true', 'Yes'],
              ]}
              onPick={choose('foul')}
            />
          </div>
        </details>
      </div>
      {plan.data !== undefined && (
        <section class="part" aria-label="The steps">
          <h2>The steps</h2>
          <PlannedSteps steps={plan.data.steps} />
        </section>
      )}
    </>
  )
}

function PlanMissing({ error, isRefused }: { error: Error | null; isRefused: boolean }) {
  if (isRefused) return <p role="status">The book does not know all it takes; the marked fields say what is missing.</p>
  return <Asking error={error} />
}

interface PlanAnswerProps {
  plan: CleanoutPlan
  isBusy: boolean
  said: string
  open(): void
}

function PlanAnswer({ plan, isBusy, said, open }: PlanAnswerProps) {
  return (
    <>
      <div role="status">
        <p class="headline">{plan.sentence}</p>
        {plan.cost !== null && (
          <p>
            It costs about <strong class="amount">{sayMoney(plan.cost, plan.currency)}</strong>, by the prices of the
            book; collection of chips and sludge not counted.
          </p>
        )}
      </div>
      {plan.change.length > 0 && (
        <div class="doubt">
          {plan.change.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </div>
      )}
      <ul class="ways">
        {plan.notes.map((note) => (
          <li key={note}>{note}</li>
        ))}
      </ul>
      <div class="buttons">
        <button type="button" class="main" disabled={isBusy} onClick={open}>
          Open the job sheet
        </button>
        <Link class="button plain" href="/cleanouts/together">
          Several machines
        </Link>
      </div>
      {said !== '' && (
        <p class="note" role="status">
          {said}
        </p>
      )}
    </>
  )
}

const readersFor = (units: Book['shop']['units']): Record<Key, (text: string) => FieldRead> => ({
  volume: (text) => readLitres(text, units, { above: 0 }),
  heldBack: (text) => readLitres(text, units),
  target: (text) => readPercent(text),
  cleanerPercent: (text) => readPercent(text),
  hours: (text) => readPlain(text, { min: 0, max: 1000 }),
  rinsePercent: (text) => readPercent(text),
  rinseFraction: (text) => {
    const read = readPercent(text)
    return 'fault' in read || read.value === null ? read : { value: read.value / 100 }
  },
  rinses: (text) => {
    const read = readPlain(text, { min: 0, max: 10 })
    const isWhole = 'fault' in read || read.value === null || Number.isInteger(read.value)
    return isWhole ? read : { fault: { found: text.trim(), expected: 'a whole number' } }
  },
})

/** What the plan has taken where a field is empty stands under it. */
function figuresFor(units: Book['shop']['units'], plan: CleanoutPlan | undefined) {
  const { volumeName } = shopUnits[units]
  const taken = plan?.opening.values
  const litres = (value: number | undefined) =>
    value === undefined ? {} : { hint: `Empty: ${fieldVolume(value, units)}` }
  const plain = (value: number | undefined, unit = '') =>
    value === undefined ? {} : { hint: `Empty: ${Number(value.toFixed(2))}${unit}` }
  return [
    { key: 'volume', label: `At the full mark, ${volumeName}`, ...litres(taken?.volume) },
    { key: 'heldBack', label: `Stays at each drain, ${volumeName}`, ...litres(taken?.heldBack) },
    { key: 'target', label: 'Target, %', ...plain(taken?.target) },
    { key: 'cleanerPercent', label: 'Cleaner as poured, %', ...plain(taken?.cleanerPercent) },
    { key: 'hours', label: 'Cleaner runs, hours', ...plain(taken?.hours) },
    { key: 'rinses', label: 'Rinses', ...plain(taken?.rinses) },
    { key: 'rinsePercent', label: 'Rinse as poured, %', ...plain(taken?.rinsePercent) },
    {
      key: 'rinseFraction',
      label: 'Rinse, % of a charge',
      ...plain(taken === undefined ? undefined : 100 * taken.rinseFraction),
    },
  ] as const
}
