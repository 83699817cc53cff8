import { say } from '@sumpbook/fluid'
import type { Thing, Units } from '../api/types.ts'
import { type EnterKey, FaultWords, SelectField, TextField } from '../fields/fields.tsx'
import type { Fault } from '../fields/read.ts'
import { RowsTable } from '../fields/rows-table.tsx'
import { shopUnits } from '../say/units.ts'
import { dipRows, textOfDips } from './list-fields.ts'
import type { Faults, Texts, ThingField } from './thing-field.ts'

interface ThingFieldsProps {
  fields: readonly ThingField[]
  texts: Texts
  faults: Faults
  units: Units
  /** Those that a field may name. */
  sumps?: readonly Thing[]
  change(texts: Texts): void
  /** Where Enter leads from the last of these fields; from the others then to the next. */
  enter?: EnterKey
}

/** The fields of a thing; a volume's label names the shop's unit in words. */
export function ThingFields({ fields, texts, faults, units, sumps = [], change, enter }: ThingFieldsProps) {
  return (
    <div class="thing-fields">
      {fields.map((field) => {
        const { path, label, hint, kind, choices, required } = field
        const shared = {
          key: path,
          label: kind === 'volume' ? `${say(label)}, ${say(shopUnits[units].volumeName)}` : say(label),
          value: texts[path] ?? '',
          onInput: (text: string) => change({ ...texts, [path]: text }),
          fault: faults[path] ?? null,
          ...(hint === undefined ? {} : { hint: say(hint) }),
          ...(required === undefined ? {} : { required }),
        }
        if (kind === 'dips') return <DipTableField {...shared} units={units} />
        if (kind === 'sump')
          return (
            <SelectField
              {...shared}
              choices={[['', say('several')], ...sumps.map(({ id, name }) => [id, name] as const)]}
            />
          )
        if (choices !== undefined)
          return <SelectField {...shared} choices={choices.map(([value, words]) => [value, say(words)] as const)} />
        return (
          <TextField
            {...shared}
            numeric={kind !== 'text' && kind !== 'pads'}
            enter={enter && (field === fields.at(-1) ? enter : 'next')}
          />
        )
      })}
    </div>
  )
}

interface DipTableFieldProps {
  label: string
  value: string
  hint?: string
  fault: Fault | null
  units: Units
  onInput(text: string): void
}

/** Folded, since few sumps have one: levels of the dipstick and what the sump holds there, a row each. */
function DipTableField({ label, value, hint, fault, units, onInput }: DipTableFieldProps) {
  const { length, volumeWord } = shopUnits[units]
  return (
    <details class="dip-table" open={value !== '' || fault !== null}>
      <summary>{label}</summary>
      <RowsTable
        one={say('Row')}
        caption={hint ?? label}
        columns={[
          { key: 'level', label: say('Level, {unit}', { unit: length }) },
          { key: 'volume', label: say('Volume, {unit}', { unit: volumeWord }) },
        ]}
        rows={dipRows(value)}
        faults={[]}
        change={(rows) => onInput(textOfDips(rows))}
      />
      {fault !== null && <FaultWords fault={fault} />}
    </details>
  )
}
