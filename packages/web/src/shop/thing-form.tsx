import { say } from '@sumpbook/fluid'
import type { Units } from '../api/types.ts'
import { type EnterKey, SelectField, TextField } from '../fields/fields.tsx'
import { shopUnits } from '../say/units.ts'
import type { Faults, Texts, ThingField } from './thing-fields.ts'

interface ThingFieldsProps {
  fields: readonly ThingField[]
  texts: Texts
  faults: Faults
  units: Units
  change(texts: Texts): void
  /** Where Enter leads from the last of these fields; from the others then to the next. */
  enter?: EnterKey
}

/** The fields of a thing; a volume's label names the shop's unit in words. */
export function ThingFields({ fields, texts, faults, units, change, enter }: ThingFieldsProps) {
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
        if (choices !== undefined)
          return <SelectField {...shared} choices={choices.map(([value, words]) => [value, say(words)] as const)} />
        return (
          <TextField
            {...shared}
            numeric={kind !== 'text'}
            enter={enter && (field === fields.at(-1) ? enter : 'next')}
          />
        )
      })}
    </div>
  )
}
