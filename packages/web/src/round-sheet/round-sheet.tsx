import { message, say, sayPercent, sayVolume } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import { useSumps, useToday } from '../api/queries.ts'
import type { Book } from '../api/types.ts'
import { SelectField } from '../fields/fields.tsx'
import type { Paper } from '../parts/page-rule.ts'
import { usePaper } from '../parts/use-paper.ts'
import { WideTable } from '../parts/wide-table.tsx'
import { Said } from '../say/said.tsx'
import { readerOf, sayBand, shopUnits } from '../say/units.ts'
import { sayDay, sayWhenShort } from '../say/when.ts'
import { type SheetRow, sheetRows } from './sheet-rows.ts'
import './round-sheet.css'

const longAgo = '1970-01-01T00:00:00Z'
/** What is written by hand at a stop. */
const empty = [
  message('°Brix'),
  message('Level'),
  message('pH'),
  message('Nitrite'),
  message('Signs'),
  message('Poured'),
] as const

/** A round on paper: for who walks without a phone, and for the corner that no network reaches. */
export function RoundSheet({ book }: { book: Book }) {
  const { shop } = book
  const sumps = useSumps()
  const today = useToday()
  const [paper, setPaper] = useState<Paper>(shop.units === 'us' ? 'letter' : 'A4')
  const now = today.data?.at ?? new Date().toISOString()
  const day = sayDay(now, shop.timeZone, longAgo)
  usePaper({ paper, landscape: true, margin: 12, foot: `${say('Round of {day}', { day })} · ${shop.name}` })
  if (sumps.data === undefined) {
    return sumps.error === null ? (
      <p class="quiet">{say('Fetching the sumps …')}</p>
    ) : (
      <p class="fault">{sumps.error.message}</p>
    )
  }
  const rows = sheetRows(sumps.data, today.data)
  return (
    <div class="round-sheet">
      <div class="no-print">
        <div class="page-head">
          <h1>{say('Round sheet')}</h1>
          <span class="quiet">{say('{count, plural, one {# stop} other {# stops}}', { count: rows.length })}</span>
        </div>
        <p>
          <Said
            text="For a walk without a phone. What is written on it goes into the book afterwards, at <page>Round</page>: on paper alone it counts nowhere."
            parts={{ page: (inside) => <Link href="/round">{inside}</Link> }}
          />
        </p>
        <div class="sheet-form">
          <SelectField
            label={say('Paper')}
            value={paper}
            onInput={(picked) => setPaper(picked as Paper)}
            choices={[
              ['A4', 'A4'],
              ['letter', say('Letter')],
            ]}
          />
          <button type="button" class="main" disabled={rows.length === 0} onClick={() => print()}>
            {say('Print')}
          </button>
        </div>
      </div>
      <WideTable of={say('Round sheet')}>
        <table>
          <caption>
            <Said
              text="<strong>Round of {day}</strong>, {shop}. Walked by {name} from {begun} to {ended}"
              values={{
                day,
                shop: shop.name,
                name: '______________________',
                begun: '________',
                ended: '________',
              }}
              parts={{ strong: (inside) => <strong>{inside}</strong> }}
            />
          </caption>
          <thead>
            <tr>
              <th scope="col">{say('Sump')}</th>
              <th scope="col">{say('Last strength')}</th>
              <th scope="col">{say('Band, target')}</th>
              <th scope="col">{say('Mark')}</th>
              <th scope="col">{say('Due')}</th>
              {empty.map((name) => (
                <th key={name} scope="col" class="by-hand">
                  {say(name)}
                  <span>{unitOf(name, shop.units)}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <Row key={row.sump.sump} row={row} shop={shop} now={now} />
            ))}
          </tbody>
        </table>
      </WideTable>
      <p class="sheet-foot">
        {say(
          'Strengths are read off a mixed sample, before anything is poured. Labels and safety data sheets of the fluids come first.',
        )}
      </p>
    </div>
  )
}

function Row({ row: { sump, due }, shop, now }: { row: SheetRow; shop: Book['shop']; now: string }) {
  const { name, place, fluid, lastStrength, bench } = sump
  const reader = readerOf(shop.units)
  const { band, target, fillVolume } = bench
  return (
    <tr>
      <th scope="row">
        {name}
        <span>{[place ?? '', fluid.name].filter((part) => part !== '').join(' · ')}</span>
      </th>
      <td class="short">
        {lastStrength !== null && (
          <>
            {lastStrength.concentration === null ? lastStrength.text : sayPercent(lastStrength.concentration, reader)}
            <span>
              {lastStrength.concentration !== null && `${lastStrength.text}, `}
              {sayWhenShort(lastStrength.at, { timeZone: shop.timeZone, now })}
            </span>
          </>
        )}
      </td>
      <td class="short">
        {band !== null && sayBand(band)}
        {target !== null && <span>{say('target {strength}', { strength: sayPercent(target, reader) })}</span>}
      </td>
      <td class="short">{fillVolume !== null && sayVolume(fillVolume, reader)}</td>
      <td class="due">
        {due.map((words) => (
          <div key={words}>{words}</div>
        ))}
      </td>
      {empty.map((field) => (
        <td key={field} class="by-hand" />
      ))}
    </tr>
  )
}

function unitOf(name: (typeof empty)[number], units: Book['shop']['units']): string {
  const { volumeWord, length } = shopUnits[units]
  switch (name) {
    case 'Level':
      return say('{volume} or {length}', { volume: volumeWord, length })
    case 'Nitrite':
      return 'mg/L'
    case 'Signs':
      return say('smell, oil, foam')
    case 'Poured':
      return say('{volume} at %', { volume: volumeWord })
    default:
      return ''
  }
}
