import { say, sayNumber } from '@sumpbook/fluid'
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
import { Said } from '../say/said.tsx'
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
        {say(
          'Skim, drain, chips out, clean, rinse, fill: with the litres of this sump, what stays in its corners reckoned in. What you leave empty is taken from the book, or as the trade does it.',
        )}
      </p>
      <div class="tool">
        <div class="tool-fields">
          <SelectField
            label={say('Sump')}
            value={sump}
            onInput={setPicked}
            choices={sumps.map(({ sump: id, name }) => [id, name] as const)}
          />
          <DayField
            label={say('Planned for')}
            value={choices.on}
            onInput={choose('on')}
            hint={say('Today reminds you on that day')}
          />
          <Figures
            fields={figuresFor(units, plan.data)}
            texts={texts}
            faults={faultAt}
            change={(key, text) => setTexts({ ...texts, [key]: text })}
          />
        </div>
        <section class="answer" aria-label={say('What it takes')}>
          {plan.data === undefined ? (
            <PlanMissing error={plan.error} isRefused={refused.length > 0} />
          ) : (
            <PlanAnswer plan={plan.data} isBusy={writing.isBusy} said={writing.said} open={() => void open()} />
          )}
        </section>
        <details class="more">
          <summary>{say('Another fluid, water, cleaner, sludge')}</summary>
          <div class="tool-fields">
            <SelectField
              label={say('Fluid that comes in')}
              value={choices.fluid}
              onInput={choose('fluid')}
              choices={[
                ['', say('The same as now')] as const,
                ...book.fluids.map(({ id, name }) => [id, name] as const),
              ]}
            />
            <SelectField
              label={say('Water of the fresh charge')}
              value={choices.water}
              onInput={choose('water')}
              choices={[['', say('What suits it')] as const, ...book.waters.map(({ id, name }) => [id, name] as const)]}
            />
            <TextField label={say('Cleaner, by name')} value={choices.cleaner} onInput={choose('cleaner')} />
            <Taps
              legend={say('Chips and sludge in it')}
              name="solids"
              value={choices.solids}
              choices={[
                ['', say('Not looked')],
                ['little', say('Little')],
                ['much', say('Much')],
              ]}
              onPick={choose('solids')}
            />
            <Taps
              legend={say('Foul: smell, slime, heavy growth')}
              name="foul"
              value={choices.foul}
              choices={[
                ['', say('Not looked')],
                ['false', say('No')],
                ['true', say('Yes')],
              ]}
              onPick={choose('foul')}
            />
          </div>
        </details>
      </div>
      {plan.data !== undefined && (
        <section class="part" aria-label={say('The steps')}>
          <h2>{say('The steps')}</h2>
          <PlannedSteps steps={plan.data.steps} />
        </section>
      )}
    </>
  )
}

function PlanMissing({ error, isRefused }: { error: Error | null; isRefused: boolean }) {
  if (isRefused)
    return <p role="status">{say('The book does not know all it takes; the marked fields say what is missing.')}</p>
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
            <Said
              text="It costs about <amount>{cost}</amount>, by the prices of the book; collection of chips and sludge not counted."
              values={{ cost: sayMoney(plan.cost, plan.currency) }}
              parts={{ amount: (inside) => <strong class="amount">{inside}</strong> }}
            />
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
          {say('Open the job sheet')}
        </button>
        <Link class="button plain" href="/cleanouts/together">
          {say('Several machines')}
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
    return isWhole ? read : { fault: { found: text.trim(), expected: say('a whole number') } }
  },
})

/** What the plan has taken where a field is empty stands under it. */
function figuresFor(units: Book['shop']['units'], plan: CleanoutPlan | undefined) {
  const unit = say(shopUnits[units].volumeName)
  const taken = plan?.opening.values
  const litres = (value: number | undefined) =>
    value === undefined ? {} : { hint: say('Empty: {value}', { value: fieldVolume(value, units) }) }
  const plain = (value: number | undefined) =>
    value === undefined ? {} : { hint: say('Empty: {value}', { value: sayNumber(value, 2, {}, 0) }) }
  return [
    { key: 'volume', label: say('At the full mark, {unit}', { unit }), ...litres(taken?.volume) },
    { key: 'heldBack', label: say('Stays at each drain, {unit}', { unit }), ...litres(taken?.heldBack) },
    { key: 'target', label: say('Target, %'), ...plain(taken?.target) },
    { key: 'cleanerPercent', label: say('Cleaner as poured, %'), ...plain(taken?.cleanerPercent) },
    { key: 'hours', label: say('Cleaner runs, hours'), ...plain(taken?.hours) },
    { key: 'rinses', label: say('Rinses'), ...plain(taken?.rinses) },
    { key: 'rinsePercent', label: say('Rinse as poured, %'), ...plain(taken?.rinsePercent) },
    {
      key: 'rinseFraction',
      label: say('Rinse, % of a charge'),
      ...plain(taken === undefined ? undefined : 100 * taken.rinseFraction),
    },
  ] as const
}
