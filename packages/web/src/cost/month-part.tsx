import { costPartNames, say, sayMonth, sayNumber, sayReason, sayVolume } from '@sumpbook/fluid'
import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import type { Book } from '../api/types.ts'
import { WideTable } from '../parts/wide-table.tsx'
import { Said } from '../say/said.tsx'
import { readerOf } from '../say/units.ts'
import { dayIn, sayDay, sayTime } from '../say/when.ts'
import { AllSumps, partsThatCost, sayOrDash } from './all-sumps.tsx'
import { type Habits, type Month, monthTableAddress, useHabits, useMonth } from './cost-api.ts'
import { MonthPicker } from './month-picker.tsx'
import { daysOf, monthsUpTo } from './months.ts'
import './cost.css'

/** The report of a month, for the screen and for paper. */
export function MonthPart({ book }: { book: Book }) {
  const today = dayIn(new Date().toISOString(), book.shop.timeZone)
  const [month, setMonth] = useState(monthsUpTo(today)[1]!)
  const report = useMonth(month)
  const habits = useHabits(daysOf(month))
  return (
    <>
      <MonthPicker month={month} today={today} pick={setMonth} />
      <div class="buttons">
        <button type="button" class="main" onClick={() => print()} disabled={report.data === undefined}>
          {say('Print')}
        </button>
        <a class="button" href={monthTableAddress(month)} download>
          {say('As a table (CSV)')}
        </a>
      </div>
      {report.error !== null && <p class="fault">{report.error.message}</p>}
      {report.data === undefined ? (
        report.error === null && <p class="quiet">{say('Adding up …')}</p>
      ) : (
        <Report report={report.data} habits={habits.data?.from === report.data.from ? habits.data : undefined} />
      )}
    </>
  )
}

interface Parts {
  report: Month
  habits: Habits | undefined
}

function Report({ report, habits }: Parts) {
  const { shop, month, sentences } = report
  return (
    <article class="month-report">
      <header>
        <h2>
          {shop.name === ''
            ? say('{month} at the shop', { month: sayMonth(month) })
            : say('{month} at {shop}', { month: sayMonth(month), shop: shop.name })}
        </h2>
        {sentences.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
        {habits?.sentences.map((sentence) => (
          <p key={sentence}>{sentence[0]!.toUpperCase() + sentence.slice(1)}</p>
        ))}
      </header>
      <CostTable report={report} />
      <Kept report={report} habits={habits} />
      <Lists report={report} />
      <Foot report={report} />
    </article>
  )
}

function Section({ title, children }: { title: string; children: ComponentChildren }) {
  return (
    <section aria-label={title}>
      <h3>{title}</h3>
      {children}
    </section>
  )
}

function CostTable({ report: { cost, shop } }: { report: Month }) {
  const shown = partsThatCost(cost)
  const money = sayOrDash(shop)
  const rows = cost.sumps.filter(({ cents }) => cents > 0)
  if (rows.length === 0) return null
  return (
    <Section title={say('Cost by part')}>
      <WideTable of={say('Cost by sump')}>
        <table>
          <thead>
            <tr>
              <th scope="col">{say('Sump')}</th>
              {shown.map((part) => (
                <th key={part} scope="col" class="figure desk">
                  {say(costPartNames[part].title)}
                </th>
              ))}
              <th scope="col" class="figure">
                {say('All')}
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ sump, name, parts, cents }) => (
              <tr key={sump ?? ''}>
                <th scope="row">{name}</th>
                {shown.map((part) => (
                  <td key={part} class="figure desk">
                    {money(parts[part])}
                  </td>
                ))}
                <td class="figure">{money(cents)}</td>
              </tr>
            ))}
          </tbody>
          <AllSumps shown={shown} cost={cost} money={money} />
        </table>
      </WideTable>
      {cost.gaps.length > 0 && (
        <>
          <p>
            <strong>{say('Not counted:')}</strong>
          </p>
          <ul>
            {cost.gaps.map(({ what, text }) => (
              <li key={what}>{text}</li>
            ))}
          </ul>
        </>
      )}
    </Section>
  )
}

/** Litres in and out, readings, days in and out of the band: a row a sump. */
function Kept({ report, habits }: Parts) {
  const reader = readerOf(report.shop.units)
  const volume = (litres: number) => (litres === 0 ? '–' : sayVolume(litres, reader))
  const days = (count: number) => (count === 0 ? '–' : sayNumber(count, 0))
  return (
    <Section title={say('Sumps')}>
      <WideTable of={say('Sumps of the month')}>
        <table>
          <thead>
            <tr>
              <th scope="col">{say('Sump')}</th>
              <th scope="col" class="figure">
                {say('Concen\u00adtrate')}
              </th>
              <th scope="col" class="figure desk">
                {say('Water')}
              </th>
              <th scope="col" class="figure desk">
                {say('By level')}
              </th>
              <th scope="col" class="figure desk">
                {say('Evapo\u00adrated')}
              </th>
              <th scope="col" class="figure desk">
                {say('Carried off')}
              </th>
              <th scope="col" class="figure desk">
                {say('Taken out')}
              </th>
              <th scope="col" class="figure">
                {say('Read, due')}
              </th>
              <th scope="col" class="figure">
                {say('Days under')}
              </th>
              <th scope="col" class="figure">
                {say('above')}
              </th>
              <th scope="col" class="figure desk">
                {say('not known')}
              </th>
            </tr>
          </thead>
          <tbody>
            {report.sumps.map(({ sump, name, litres, out, readings, days: stood }) => {
              const losses = habits?.sumps.find((one) => one.sump === sump)?.losses
              const about = (figure: { mean: number; low: number; high: number } | undefined) =>
                figure === undefined ? '' : `~${sayVolume(figure.mean, reader)}`
              return (
                <tr key={sump}>
                  <th scope="row">{name}</th>
                  <td class="figure">{volume(litres.concentrate)}</td>
                  <td class="figure desk">{volume(litres.water)}</td>
                  <td class="figure desk">{volume(litres.byLevel.mix)}</td>
                  <td class="figure desk">{about(losses?.evaporation)}</td>
                  <td class="figure desk">{about(losses?.carryOff)}</td>
                  <td class="figure desk">{volume(out.drawnOff + out.skimmed + out.movedOut)}</td>
                  <td class="figure">
                    {readings.strength}
                    {readings.due > 0 && `, ${readings.due}`}
                  </td>
                  <td class="figure">{stood === null ? '' : days(stood.under)}</td>
                  <td class="figure">{stood === null ? '' : days(stood.above)}</td>
                  <td class="figure desk">{stood === null ? '' : days(stood.unknown)}</td>
                </tr>
              )
            })}
          </tbody>
        </table>
      </WideTable>
      <p class="quiet">
        {say(
          'Concentrate and water as they were written; by level: mix filled to the mark without measuring, reckoned from the level read before. Evaporated and carried off are the estimate’s, whose intervals stand on the page of each sump. Days by the readings, each good for a week.',
        )}
      </p>
    </Section>
  )
}

function Lists({ report }: { report: Month }) {
  const { shop, stock, waste, cleanouts, verdicts, corrections, sumps } = report
  const reader = readerOf(shop.units)
  const volume = (litres: number | null) => (litres === null ? say('amount not written') : sayVolume(litres, reader))
  const amount = (line: { litres: number | null; kilograms: number | null }) =>
    line.litres === null && line.kilograms !== null ? `${sayNumber(line.kilograms, 0)} kg` : volume(line.litres)
  const day = (at: string) => sayDay(at, shop.timeZone)
  const nameOf = (sump: string | null) => sumps.find((one) => one.sump === sump)?.name ?? sump ?? ''
  const who = (by: string | null) => (by === null ? '' : ` (${report.names[by] ?? by})`)
  const stored = [...Map.groupBy(waste.stored, ({ stream }) => stream)]
  return (
    <>
      {stock.length > 0 && (
        <Section title={say('Concentrate in and out of stock')}>
          <ul>
            {stock.map(({ fluid, name, received, issued, poured }) => (
              <li key={fluid}>
                {say('{fluid}: {received} received, {issued} issued, {poured} poured', {
                  fluid: name,
                  received: volume(received),
                  issued: volume(issued),
                  poured: volume(poured),
                })}
              </li>
            ))}
          </ul>
        </Section>
      )}
      {stored.length + waste.pickups.length > 0 && (
        <Section title={say('Waste')}>
          <ul>
            {stored.map(([stream, lines]) => (
              <li key={stream}>
                {say('{stream}: {volume} stored, {times, plural, one {# time} other {# times}}', {
                  stream: stream === '' ? say('Waste') : stream,
                  volume: volume(lines.reduce((sum, { litres }) => sum + (litres ?? 0), 0)),
                  times: lines.length,
                })}
              </li>
            ))}
            {waste.pickups.map(({ entry, at, stream, code, document, by, ...line }) => (
              <li key={entry}>
                <strong>{say('Picked up {day}:', { day: day(at) })}</strong>{' '}
                {stream === ''
                  ? say('{volume} of waste', { volume: amount(line) })
                  : say('{amount} of {stream}', { amount: amount(line), stream })}
                {code === null ? '' : `, ${code}`},{' '}
                {document === null ? say('no document number written') : say('document {document}', { document })}
                {who(by)}
              </li>
            ))}
          </ul>
        </Section>
      )}
      {cleanouts.length > 0 && (
        <Section title={say('Cleanouts')}>
          <ul>
            {cleanouts.map(({ entry, at, sump, cleaner, hours, wasteLitres, by }) => (
              <li key={entry}>
                {day(at)}: {nameOf(sump)}
                {cleaner === null ? '' : `, ${cleaner}`}
                {hours === null ? '' : `, ${sayNumber(hours, 1, {}, 0)} h`}
                {wasteLitres === null ? '' : `, ${say('{volume} of waste', { volume: volume(wasteLitres) })}`}
                {who(by)}
              </li>
            ))}
          </ul>
        </Section>
      )}
      {verdicts.length > 0 && (
        <Section title={say('Doubts settled')}>
          <ul>
            {verdicts.map(({ entry, at, sump, answer, by }) => (
              <li key={entry}>
                {day(at)}: {nameOf(sump)}, {answer}
                {who(by)}
              </li>
            ))}
          </ul>
        </Section>
      )}
      <Section title={say('Withdrawn')}>
        {corrections.length === 0 ? (
          <p>{say('Nothing of this month was withdrawn.')}</p>
        ) : (
          <ul>
            {corrections.map(({ entry, at, sump, text, by, withdrawn }) => (
              <li key={entry}>
                <s>
                  {day(at)} {sayTime(at, shop.timeZone)} {nameOf(sump)}: {text}
                  {who(by)}
                </s>
                ; {say('withdrawn {day}', { day: day(withdrawn.at) })}
                {who(withdrawn.by)}
                {withdrawn.reason === null ? '' : `: ${sayReason(withdrawn.reason)}`}
              </li>
            ))}
          </ul>
        )}
      </Section>
    </>
  )
}

function Foot({ report: { head, people, names: said, madeAt, shop, entries } }: { report: Month }) {
  const named = people.map(({ id, entries: count }) =>
    id === null
      ? say('without a name {count}', { count: sayNumber(count, 0) })
      : `${said[id] ?? id} ${sayNumber(count, 0)}`,
  )
  return (
    <footer>
      {people.length > 0 && (
        <p>
          {say(
            'Who took part, with their entries: {people}; {count, plural, one {# entry} other {# entries}} in all.',
            {
              people: named.join(', '),
              count: entries,
            },
          )}
        </p>
      )}
      <p>
        <Said
          text="Made {day} {time} from the entries up to number {number} of the book, whose chain ends in <code>{hash}</code>"
          values={{
            day: sayDay(madeAt, shop.timeZone),
            time: sayTime(madeAt, shop.timeZone),
            number: sayNumber(head.seq, 0),
            hash: head.hash,
          }}
          parts={{ code: (hash) => <code>{hash}</code> }}
        />
      </p>
    </footer>
  )
}
