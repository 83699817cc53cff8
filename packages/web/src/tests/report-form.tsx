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
      aria-label="Write the report down"
      onSubmit={(event) => {
        event.preventDefault()
        void submit()
      }}
    >
      <div class="narrow">
        <TextField label="Laboratory" value={lab} onInput={setLab} />
      </div>
      <table class="rows-table">
        <caption>What was found</caption>
        <thead>
          <tr>
            <th>Name</th>
            <th>Figure</th>
            <th>Unit</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row, n) => (
            <tr key={n}>
              {(['name', 'value', 'unit'] as const).map((key) => (
                <td key={key}>
                  <input
                    value={row[key]}
                    inputMode={key === 'value' ? 'decimal' : 'text'}
                    autocomplete="off"
                    aria-label={`Row ${n + 1}, ${key === 'value' ? 'figure' : key}`}
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
          Write it down
        </button>
      </div>
    </form>
  )
}

function readRow({ name, value }: Row) {
  if (name.trim() === '' && value.trim() === '') return null
  const read = readClass(value, ends)
  if ('fault' in read) return read
  if (read.value === null) return { fault: { found: 'nothing', expected: 'a figure such as 12 or <0.1' } }
  return name.trim() === '' ? { fault: { found: 'no name', expected: 'what was found, such as boron' } } : read
}
