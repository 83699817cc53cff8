import { message } from '@sumpbook/fluid'
import type { SheetField } from '../sheet-types.ts'
import type { Dimension } from './units.ts'

/** Fields that hold numbers: a reading's values, and what was poured or taken out. */
export const numberFields = {
  brix: ['brix'],
  titration: ['percent'],
  ph: ['ph'],
  hardness: ['hardness'],
  chloride: ['mass'],
  conductivity: ['conductivity'],
  sulfate: ['mass'],
  nitrate: ['mass'],
  nitrite: ['mass'],
  temperature: ['temperature'],
  bacteria: ['count'],
  fungi: ['count'],
  trampOil: ['percent'],
  dissolvedOxygen: ['mass'],
  machineHours: ['hours'],
  level: ['length', 'volume'],
  volume: ['volume'],
  added: ['volume'],
  addedStrength: ['percent'],
  addedConcentrate: ['volume'],
  addedWater: ['volume'],
  drawoff: ['volume'],
  skimmed: ['volume'],
} as const satisfies Partial<Record<SheetField, readonly Dimension[]>>

export type NumberField = keyof typeof numberFields

/** Fields of one machine: numbers, and words about it. */
export const sumpFields: readonly SheetField[] = [...(Object.keys(numberFields) as NumberField[]), 'pumps', 'water']

/** Fields of the row. */
export const rowFields: readonly SheetField[] = ['at', 'time', 'sump', 'by', 'note']

export const sheetFields: readonly SheetField[] = [...rowFields, ...sumpFields]

export const isNumberField = (field: SheetField | null): field is NumberField =>
  field !== null && Object.hasOwn(numberFields, field)

/** What a field is called in questions and reports. */
export const fieldWords: Record<SheetField, string> = {
  at: message('date'),
  time: message('time of day'),
  sump: message('machine'),
  by: message('who'),
  note: message('note'),
  brix: message('°Brix'),
  titration: message('titration'),
  ph: message('pH'),
  hardness: message('hardness'),
  chloride: message('chloride'),
  conductivity: message('conductivity'),
  sulfate: message('sulfate'),
  nitrate: message('nitrate'),
  nitrite: message('nitrite'),
  temperature: message('temperature'),
  bacteria: message('bacteria'),
  fungi: message('fungi'),
  trampOil: message('tramp oil'),
  dissolvedOxygen: message('dissolved oxygen'),
  machineHours: message('machine hours'),
  level: message('level'),
  volume: message('volume in the sump'),
  pumps: message('pumps'),
  added: message('mix added'),
  addedStrength: message('strength of what was added'),
  addedConcentrate: message('concentrate added'),
  addedWater: message('water added'),
  water: message('which water'),
  drawoff: message('drawn off'),
  skimmed: message('tramp oil skimmed'),
}
