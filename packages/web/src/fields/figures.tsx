import type { ComponentChildren } from 'preact'
import { TextField } from './fields.tsx'
import type { FieldFaults, FieldTexts } from './read-texts.ts'

/** A field for one figure. */
export interface FigureField<Key extends string> {
  key: Key
  /** Its unit in words. */
  label: string
  hint?: string
}

interface FiguresProps<Key extends string> {
  fields: readonly FigureField<Key>[]
  texts: FieldTexts<Key>
  faults: FieldFaults<Key>
  change(key: Key, text: string): void
  /** Fields of another kind, behind the others. */
  children?: ComponentChildren
}

/** Fields for figures, as many in a row as there is room for. */
export function Figures<Key extends string>({ fields, texts, faults, change, children }: FiguresProps<Key>) {
  return (
    <div class="figures">
      {fields.map(({ key, label, hint }) => (
        <TextField
          key={key}
          numeric
          label={label}
          value={texts[key]}
          onInput={(text) => change(key, text)}
          fault={faults[key] ?? null}
          {...(hint === undefined ? {} : { hint })}
        />
      ))}
      {children}
    </div>
  )
}
