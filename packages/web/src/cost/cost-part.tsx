import {
  type CostGrowth,
  costPartNames,
  say,
  sayCents,
  sayList,
  sayNumber,
  sayStrength,
  sayVolume,
} from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import type { Book } from '../api/types.ts'
import { WideTable } from '../parts/wide-table.tsx'
import { Said } from '../say/said.tsx'
import { readerOf } from '../say/units.ts'
import { dayIn } from '../say/when.ts'
import { AllSumps, partsThatCost, sayOrDash } from './all-sumps.tsx'
import { type Cost, type Habits, type Lives, type SumpCost, useCost, useHabits, useLives } from './cost-api.ts'
import { MonthPicker } from './month-picker.tsx'
import { daysOf, monthsUpTo } from './months.ts'
import { OwnFiguresForm } from './own-figures-form.tsx'
import './cost.css'

/** What a month cost and what of it, what running rich cost, what a steadier hand saves, when a change pays. */
export function CostPart({ book }: { book: Book }) {
  const today = dayIn(new Date().toISOString(), book.shop.timeZone)
  const [month, setMonth] = useState(monthsUpTo(today)[1]!)
  const days = daysOf(month)
  const cost = useCost(days)
  const habits = useHabits(days)
  const lives = useLives()
  // What comes later would push down what somebody reads already.
  const isComing = cost.isPending || habits.isPending || lives.isPending
  return (
    <>
      <MonthPicker month={month} today={today} pick={setMonth} />
      {cost.error !== null && <p class="fault">{cost.error.message}</p>}
      {isComing || cost.data === undefined ? (
        cost.error === null && <p class="quiet">{say('Adding up …')}</p>
      ) : (
        <>
          <Sentences cost={cost.data} habits={habits.data} />
          <SumpTable cost={cost.data} book={book} />
          <Gaps cost={cost.data} />
          <Steadier habits={habits.data} book={book} />
          <WhenToChange lives={lives.data} />
          <section class="part" aria-label={say('The shop’s own figures')}>
            <h2>{say('The shop’s own figures')}</h2>
            <p class="intro">
              <Said
                text="Nothing has a price unless you give it one. Prices of concentrate stand with <fluids>the fluids</fluids>, those of water with <waters>the waters</waters>."
                parts={{
                  fluids: (inside) => <Link href="/shop">{inside}</Link>,
                  waters: (inside) => <Link href="/water">{inside}</Link>,
                }}
              />
            </p>
            <OwnFiguresForm key={month} book={book} cost={cost.data} today={today} />
            <details class="more">
              <summary>{say('What is taken for granted')}</summary>
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
          <Said
            text="{waters} cost {money} more than the cheapest water would have. What it spares is minerals: <ahead>see how far</ahead>."
            values={{ waters: treated(cost), money: sayCents(treatedExtra, { currency }) }}
            parts={{ ahead: (inside) => <Link href="/water/ahead">{inside}</Link> }}
          />
        </p>
      )}
    </>
  )
}

const treated = ({ waters }: Cost) => {
  const kinds = waters.filter(({ kind }) => kind === 'deionised' || kind === 'reverse-osmosis').map(({ name }) => name)
  return kinds.length === 0 ? say('The dearer water') : sayList(kinds)
}

function SumpTable({ cost, book }: { cost: Cost; book: Book }) {
  const { currency } = cost
  const shown = partsThatCost(cost)
  const rows = cost.sumps.filter(({ cents, litres, stops }) => cents > 0 || litres.mix > 0 || stops > 0)
  const money = sayOrDash(cost)
  if (rows.length === 0) return null
  return (
    <WideTable of={say('Cost by sump')}>
      <table class="cost-table">
        <caption class="only-read">{say('Cost by sump')}</caption>
        <thead>
          <tr>
            <th scope="col">{say('Sump')}</th>
            {shown.map((part) => (
              <th key={part} scope="col" class="figure desk">
                {say(costPartNames[part].title)}
              </th>
            ))}
            <th scope="col" class="figure">
              {say('Cost')}
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
                  <span class="quiet poured">
                    {say('{money} a machine hour', { money: sayCents(row.centsPerHour, { currency }) })}
                  </span>
                )}
              </td>
            </tr>
          ))}
        </tbody>
        <AllSumps shown={shown} cost={cost} money={money} />
      </table>
    </WideTable>
  )
}

function pouredWords({ sump, litres, wasteLitres, stops }: SumpCost, { shop: { units } }: Book): string {
  if (sump === null) return say('What belongs to no sump')
  const reader = readerOf(units)
  const { mix, concentrate, byLevel } = litres
  return [
    mix + byLevel.mix > 0
      ? say('{concentrate} of concentrate in {mix}', {
          concentrate: sayVolume(concentrate + byLevel.concentrate, reader),
          mix: sayVolume(mix + byLevel.mix, reader),
        })
      : '',
    wasteLitres > 0 ? say('{volume} of waste', { volume: sayVolume(wasteLitres, reader) }) : '',
    say('{count, plural, one {# stop} other {# stops}}', { count: stops }),
  ]
    .filter((words) => words !== '')
    .join(', ')
}

function Gaps({ cost: { gaps } }: { cost: Cost }) {
  if (gaps.length === 0) return null
  return (
    <section class="part" aria-label={say('Not counted')}>
      <h2>{say('Not counted')}</h2>
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
  if (habits === undefined) return <p class="quiet">{say('Looking at how strong the sumps ran …')}</p>
  const telling = habits.sumps.filter(isTelling)
  const silent = habits.sumps.filter((habit) => !isTelling(habit))
  return (
    <section class="part" aria-label={say('A steadier hand')}>
      <h2>{say('A steadier hand')}</h2>
      <p class="intro">{say('What was poured, against what holding the target would have taken.')}</p>
      {telling.map((habit) => (
        <HabitOfSump key={habit.sump} habit={habit} book={book} />
      ))}
      {silent.length > 0 && (
        <details class="more">
          <summary>
            {telling.length === 0
              ? say('At no sump does what was written promise a saving')
              : say('At {count, plural, one {# other sump} other {# other sumps}} nothing can be promised', {
                  count: silent.length,
                })}
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
          {say('Topped up at {poured} on average; about {hold} holds its target.', {
            poured: sayStrength(pouredStrength, reader),
            hold: sayStrength(topUpToHold, reader),
          })}
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
    <section class="part" aria-label={say('When a change pays')}>
      <h2>{say('When a change pays')}</h2>
      {telling.map(({ sump, name, sentence, condition }) => (
        <p key={sump} class={condition === null ? '' : 'fault'}>
          <strong>{name}:</strong> {sentence}
        </p>
      ))}
      {silent.length > 0 && (
        <details class="more">
          <summary>
            {telling.length === 0
              ? say('Money gives no reason to change any charge: condition decides')
              : say('{count} more: condition decides', { count: sayNumber(silent.length, 0) })}
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
