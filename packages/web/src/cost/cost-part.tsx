import { type CostGrowth, costPartNames, sayCents, sayCount, sayNumber, sayStrength, sayVolume } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import type { Book } from '../api/types.ts'
import { WideTable } from '../parts/wide-table.tsx'
import { readerOf } from '../say/units.ts'
import { dayIn } from '../say/when.ts'
import { type Cost, type Habits, type Lives, type SumpCost, useCost, useHabits, useLives } from './cost-api.ts'
import { MonthPicker } from './month-picker.tsx'
import { daysOf, monthsUpTo } from './months.ts'
import { OwnFiguresForm } from './own-figures-form.tsx'
import './cost.css'

type Part = keyof typeof costPartNames
const parts = Object.keys(costPartNames) as Part[]

/** What a month cost and what of it, what running rich cost, what a steadier hand saves, when a change pays. */
export function CostPart({ book }: { book: Book }) {
  const today = dayIn(new Date().toISOString(), book.shop.timeZone)
  const [month, setMonth] = useState(monthsUpTo(today)[1]!)
  const days = daysOf(month)
  const cost = useCost(days)
  const habits = useHabits(days)
  const lives = useLives()
  return (
    <>
      <MonthPicker month={month} today={today} pick={setMonth} />
      {cost.error !== null && <p class="fault">{cost.error.message}</p>}
      {cost.data === undefined ? (
        cost.error === null && <p class="quiet">Adding up …</p>
      ) : (
        <>
          <Sentences cost={cost.data} habits={habits.data} />
          <SumpTable cost={cost.data} book={book} />
          <Gaps cost={cost.data} />
          <Steadier habits={habits.data} book={book} />
          <WhenToChange lives={lives.data} />
          <section class="part" aria-label="The shop’s own figures">
            <h2>The shop’s own figures</h2>
            <p class="intro">
              Nothing has a price unless you give it one. Prices of concentrate stand with{' '}
              <Link href="/shop">the fluids</Link>, those of water with <Link href="/water">the waters</Link>.
            </p>
            <OwnFiguresForm key={month} book={book} cost={cost.data} today={today} />
            <details class="more">
              <summary>What is taken for granted</summary>
              <ul>
                {[...cost.data.rules, ...(habits.data?.rules ?? []), ...(lives.data?.rules ?? [])].map((rule) => (
                  <li key={rule}>{rule}</li>
                ))}
              </ul>
            </details>
          </section>
        </>
      )}
    </>
  )
}

function Sentences({ cost, habits }: { cost: Cost; habits: Habits | undefined }) {
  const [first, ...more] = cost.sentences
  const { treatedExtra, currency } = cost
  return (
    <>
      <p class="lede" role="status">
        {first} {habits?.sentences.join(' ')}
      </p>
      {more.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {treatedExtra !== null && treatedExtra > 0 && (
        <p>
          {treated(cost)} cost {sayCents(treatedExtra, { currency })} more than the cheapest water would have. What it
          spares is minerals: <Link href="/water/ahead">see how far</Link>.
        </p>
      )}
    </>
  )
}

const treated = ({ waters }: Cost) => {
  const kinds = waters.filter(({ kind }) => kind === 'deionised' || kind === 'reverse-osmosis').map(({ name }) => name)
  return kinds.length === 0 ? 'The dearer water' : kinds.join(' and ')
}

function SumpTable({ cost, book }: { cost: Cost; book: Book }) {
  const { currency } = cost
  const shown = parts.filter((part) => cost.parts[part] > 0)
  const rows = cost.sumps.filter(({ cents, litres, stops }) => cents > 0 || litres.mix > 0 || stops > 0)
  const money = (cents: number) => (cents === 0 ? '–' : sayCents(cents, { currency }))
  if (rows.length === 0) return null
  return (
    <WideTable of="Cost by sump">
      <table class="cost-table">
        <caption class="only-read">Cost by sump</caption>
        <thead>
          <tr>
            <th scope="col">Sump</th>
            {shown.map((part) => (
              <th key={part} scope="col" class="figure desk">
                {costPartNames[part].title}
              </th>
            ))}
            <th scope="col" class="figure">
              Cost
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.sump ?? ''}>
              <th scope="row">
                {row.sump === null ? row.name : <Link href={`/sumps/${encodeURIComponent(row.sump)}`}>{row.name}</Link>}
                <span class="quiet poured">{pouredWords(row, book)}</span>
              </th>
              {shown.map((part) => (
                <td key={part} class="figure desk">
                  {money(row.parts[part])}
                </td>
              ))}
              <td class="figure">
                {money(row.cents)}
                {row.centsPerHour !== null && (
                  <span class="quiet poured">{sayCents(row.centsPerHour, { currency })} a machine hour</span>
                )}
              </td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">All</th>
            {shown.map((part) => (
              <td key={part} class="figure desk">
                {money(cost.parts[part])}
              </td>
            ))}
            <td class="figure">{money(cost.cents)}</td>
          </tr>
        </tfoot>
      </table>
    </WideTable>
  )
}

function pouredWords({ sump, litres, wasteLitres, stops }: SumpCost, { shop: { units } }: Book): string {
  if (sump === null) return 'What belongs to no sump'
  const reader = readerOf(units)
  const { mix, concentrate, byLevel } = litres
  return [
    mix + byLevel.mix > 0
      ? `${sayVolume(concentrate + byLevel.concentrate, reader)} of concentrate in ${sayVolume(mix + byLevel.mix, reader)}`
      : '',
    wasteLitres > 0 ? `${sayVolume(wasteLitres, reader)} of waste` : '',
    sayCount(stops, 'stop', 'stops'),
  ]
    .filter((words) => words !== '')
    .join(', ')
}

function Gaps({ cost: { gaps } }: { cost: Cost }) {
  if (gaps.length === 0) return null
  return (
    <section class="part" aria-label="Not counted">
      <h2>Not counted</h2>
      <ul>
        {gaps.map(({ what, text }) => (
          <li key={what}>{text}</li>
        ))}
      </ul>
    </section>
  )
}

type SumpHabit = Habits['sumps'][number]

/** Where more than what is not known speaks for another way, or a sump stood under its band. */
const isTelling = ({ saving, lean }: SumpHabit) =>
  lean.days > 0 || (saving !== null && (saving.saved.low > 0 || saving.saved.high < 0))

function Steadier({ habits, book }: { habits: Habits | undefined; book: Book }) {
  if (habits === undefined) return <p class="quiet">Looking at how strong the sumps ran …</p>
  const telling = habits.sumps.filter(isTelling)
  const silent = habits.sumps.filter((habit) => !isTelling(habit))
  return (
    <section class="part" aria-label="A steadier hand">
      <h2>A steadier hand</h2>
      <p class="intro">What was poured, against what holding the target would have taken.</p>
      {telling.map((habit) => (
        <HabitOfSump key={habit.sump} habit={habit} book={book} />
      ))}
      {silent.length > 0 && (
        <details class="more">
          <summary>
            {telling.length === 0
              ? 'At no sump does what was written promise a saving'
              : `At ${sayCount(silent.length, 'other sump', 'other sumps')} nothing can be promised`}
          </summary>
          {silent.map((habit) => (
            <HabitOfSump key={habit.sump} habit={habit} book={book} />
          ))}
        </details>
      )}
    </section>
  )
}

function HabitOfSump({ habit, book }: { habit: SumpHabit; book: Book }) {
  const reader = readerOf(book.shop.units)
  const { sump, name, sentences, topUpToHold, pouredStrength } = habit
  return (
    <div class="habit">
      <h3>
        <Link href={`/sumps/${encodeURIComponent(sump)}`}>{name}</Link>
      </h3>
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence[0]!.toUpperCase() + sentence.slice(1)}</p>
      ))}
      {topUpToHold !== null && pouredStrength !== null && (
        <p class="quiet">
          Topped up at {sayStrength(pouredStrength, reader)} on average; about {sayStrength(topUpToHold, reader)} holds
          its target.
        </p>
      )}
    </div>
  )
}

function WhenToChange({ lives }: { lives: Lives | undefined }) {
  if (lives === undefined) return null
  const inOrder = lives.sumps.toSorted((a, b) => rank(a) - rank(b))
  const silent = inOrder.filter((life) => rank(life) === 2)
  const telling = inOrder.filter((life) => rank(life) < 2)
  return (
    <section class="part" aria-label="When a change pays">
      <h2>When a change pays</h2>
      {telling.map(({ sump, name, sentence, condition }) => (
        <p key={sump} class={condition === null ? '' : 'fault'}>
          <strong>{name}:</strong> {sentence}
        </p>
      ))}
      {silent.length > 0 && (
        <details class="more">
          <summary>
            {telling.length === 0
              ? 'Money gives no reason to change any charge'
              : `${sayNumber(silent.length, 0)} more`}
            : condition decides
          </summary>
          {silent.map(({ sump, name, sentence }) => (
            <p key={sump}>
              <strong>{name}:</strong> {sentence}
            </p>
          ))}
        </details>
      )}
    </section>
  )
}

/** Condition first, then those with an age by money, then those of which nothing can be said. */
const rank = ({ condition, life }: { condition: string | null; life: unknown; growth: CostGrowth }) =>
  condition !== null ? 0 : life !== null ? 1 : 2
