import { message, say, sayNumber } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import type { SampleLine } from '../api/guidance.ts'
import type { Entry } from '../api/types.ts'
import { stampNow } from '../entry/this-device.ts'
import { FaultWords, TextField } from '../fields/fields.tsx'
import type { Fault } from '../fields/read.ts'
import { readClass } from './read-class.ts'
import { resultEntry } from './test-entries.ts'

interface Row {
  name: string
  value: string
  unit: string
}
const empty: Row = { name: '', value: '', unit: '' }
const columns = [
  { key: 'name', heading: message('Name'), label: message('Row {row}, name') },
  { key: 'value', heading: message('Figure'), label: message('Row {row}, figure') },
  { key: 'unit', heading: message('Unit'), label: message('Row {row}, unit') },
] as const
/** A report may find anything; below 0 only what is no amount. */
const ends = { min: -1e6, max: 1e12 }

/** A laboratory's report, as it stands on its paper: name, figure, unit. */
export function ReportForm({
  sample,
  isBusy,
  write,
}: {
  sample: SampleLine
  isBusy: boolean
  write(entries: Entry[]): Promise<boolean>
}) {
  const [rows, setRows] = useState<readonly Row[]>([empty, empty, empty])
  const [lab, setLab] = useState('')
  const [faults, setFaults] = useState<readonly (Fault | null)[]>([])
  const change = (n: number, more: Partial<Row>) => {
    const next = rows.map((row, at) => (at === n ? { ...row, ...more } : row))
    setRows(next.at(-1)!.name === '' ? next : [...next, empty])
  }
  const submit = async () => {
    const filled = rows.map((row) => ({ ...row, read: readRow(row) }))
    const found = filled.map(({ read }) => (read !== null && 'fault' in read ? read.fault : null))
    setFaults(found)
    const analytes = filled.flatMap(({ name, unit, read }) =>
      read === null || 'fault' in read || read.value === null
        ? []
        : [
            {
              name: name.trim(),
              value: read.value,
              ...(unit.trim() === '' ? {} : { unit: unit.trim() }),
              ...(lab.trim() === '' ? {} : { lab: lab.trim() }),
            },
          ],
    )
    if (found.some((fault) => fault !== null) || analytes.length === 0) return
    await write([resultEntry(sample, { analytes }, stampNow())])
  }
  return (
    <form
      class="report-form"
      aria-label={say('Write the report down')}
      onSubmit={(event) => {
        event.preventDefault()
        void submit()
      }}
    >
      <div class="narrow">
        <TextField label={say('Laboratory')} value={lab} onInput={setLab} />
      </div>
      <table class="rows-table">
        <caption>{say('What was found')}</caption>
        <thead>
          <tr>
            {columns.map(({ key, heading }) => (
              <th key={key}>{say(heading)}</th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, n) => (
            <tr key={n}>
              {columns.map(({ key, label }) => (
                <td key={key}>
                  <input
                    value={row[key]}
                    inputMode={key === 'value' ? 'decimal' : 'text'}
                    autocomplete="off"
                    aria-label={say(label, { row: sayNumber(n + 1, 0) })}
                    aria-invalid={key === 'value' && faults[n] != null ? 'true' : undefined}
                    onInput={({ currentTarget: { value } }) => change(n, { [key]: value })}
                  />
                  {key === 'value' && faults[n] != null && <FaultWords fault={faults[n]!} />}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <div class="buttons">
        <button type="submit" class="main" disabled={isBusy || rows.every(({ name }) => name.trim() === '')}>
          {say('Write it down')}
        </button>
      </div>
    </form>
  )
}

function readRow({ name, value }: Row) {
  if (name.trim() === '' && value.trim() === '') return null
  const read = readClass(value, ends)
  if ('fault' in read) return read
  if (read.value === null)
    return {
      fault: {
        found: say('nothing'),
        expected: say('a figure such as 12 or {less}', { less: `<${sayNumber(0.1, 1)}` }),
      },
    }
  return name.trim() === ''
    ? { fault: { found: say('no name'), expected: say('what was found, such as boron') } }
    : read
}
