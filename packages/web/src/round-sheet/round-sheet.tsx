import { sayPercent, sayVolume } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import { useSumps, useToday } from '../api/queries.ts'
import type { Book } from '../api/types.ts'
import { SelectField } from '../fields/fields.tsx'
import type { Paper } from '../parts/page-rule.ts'
import { usePaper } from '../parts/use-paper.ts'
import { WideTable } from '../parts/wide-table.tsx'
import { readerOf, sayBand, shopUnits } from '../say/units.ts'
import { sayDay, sayWhenShort } from '../say/when.ts'
import { type SheetRow, sheetRows } from './sheet-rows.ts'
import './round-sheet.css'

const longAgo = '1970-01-01T00:00:00Z'
/** What is written by hand at a stop. */
const empty = ['°Brix', 'Level', 'pH', 'Nitrite', 'Signs', 'Poured'] as const

/** A round on paper: for who walks without a phone, and for the corner that no network reaches. */
export function RoundSheet({ book }: { book: Book }) {
  const { shop } = book
  const sumps = useSumps()
  const today = useToday()
  const [paper, setPaper] = useState<Paper>(shop.units === 'us' ? 'letter' : 'A4')
  const now = today.data?.at ?? new Date().toISOString()
  const day = sayDay(now, shop.timeZone, longAgo)
  usePaper({ paper, landscape: true, margin: 12, foot: `Round of ${day} · ${shop.name}` })
  if (sumps.data === undefined) {
    return sumps.error === null ? <p class="quiet">Fetching the sumps …</p> : <p class="fault">{sumps.error.message}</p>
  }
  const rows = sheetRows(sumps.data, today.data)
  return (
    <div class="round-sheet">
      <div class="no-print">
        <div class="page-head">
          <h1>Round sheet</h1>
          <span class="quiet">{rows.length === 1 ? '1 stop' : `${rows.length} stops`}</span>
        </div>
        <p>
          For a walk without a phone. What is written on it goes into the book afterwards, at{' '}
          <Link href="/round">Round</Link>: on paper alone it counts nowhere.
        </p>
        <div class="sheet-form">
          <SelectField
            label="Paper"
            value={paper}
            onInput={(picked) => setPaper(picked as Paper)}
            choices={[
              ['A4', 'A4'],
              ['letter', 'Letter'],
            ]}
          />
          <button type="button" class="main" disabled={rows.length === 0} onClick={() => print()}>
            Print
          </button>
        </div>
      </div>
      <WideTable of="Round sheet">
        <table>
          <caption>
            <strong>Round of {day}</strong>, {shop.name}. Walked by ______________________ from ________ to ________
          </caption>
          <thead>
            <tr>
              <th scope="col">Sump</th>
              <th scope="col">Last strength</th>
              <th scope="col">Band, target</th>
              <th scope="col">Mark</th>
              <th scope="col">Due</th>
              {empty.map((name) => (
                <th key={name} scope="col" class="by-hand">
                  {name}
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
        Strengths are read off a mixed sample, before anything is poured. Labels and safety data sheets of the fluids
        come first.
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
        {target !== null && <span>target {sayPercent(target, reader)}</span>}
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
      return `${volumeWord} or ${length}`
    case 'Nitrite':
      return 'mg/L'
    case 'Signs':
      return 'smell, oil, foam'
    case 'Poured':
      return `${volumeWord} at %`
    default:
      return ''
  }
}
