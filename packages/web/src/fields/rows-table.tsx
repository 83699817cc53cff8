import { say } from '@sumpbook/fluid'
import { useId } from 'preact/hooks'
import { FaultWords } from './fields.tsx'
import type { Fault } from './read.ts'
import { type Row, withText } from './rows.ts'

interface RowsTableProps<Key extends string> {
  /** Says what a row is: "mix" makes "Mix 2, °Brix". */
  one: string
  caption: string
  columns: readonly { key: Key; label: string }[]
  rows: readonly Row<Key>[]
  /** By row. */
  faults: readonly Partial<Record<Key, Fault | string>>[]
  least?: number
  change(rows: readonly Row<Key>[]): void
}

/** A small table to type into; it grows as it is filled. */
export function RowsTable<Key extends string>(props: RowsTableProps<Key>) {
  const { one, caption, columns, rows, faults, least = 1, change } = props
  const id = useId()
  return (
    <table class="rows-table">
      <caption>{caption}</caption>
      <thead>
        <tr>
          {columns.map(({ key, label }) => (
            <th key={key} id={`${id}-${key}`}>
              {label}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row, index) => (
          <tr key={index}>
            {columns.map(({ key, label }) => {
              const fault = faults[index]?.[key]
              return (
                <td key={key}>
                  <input
                    value={row[key]}
                    inputMode="decimal"
                    autocomplete="off"
                    aria-label={say('{one} {number}, {label}', { one, number: String(index + 1), label })}
                    aria-invalid={fault === undefined ? undefined : 'true'}
                    aria-describedby={fault === undefined ? undefined : `${id}-${index}-${key}`}
                    onInput={({ currentTarget: { value: text } }) =>
                      change(withText(rows, { index, key, text, least }))
                    }
                  />
                  {fault !== undefined && (
                    <div id={`${id}-${index}-${key}`}>
                      <FaultWords fault={fault} />
                    </div>
                  )}
                </td>
              )
            })}
          </tr>
        ))}
      </tbody>
    </table>
  )
}
