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
  at: 'date',
  time: 'time of day',
  sump: 'machine',
  by: 'who',
  note: 'note',
  brix: '°Brix',
  titration: 'titration',
  ph: 'pH',
  hardness: 'hardness',
  chloride: 'chloride',
  conductivity: 'conductivity',
  sulfate: 'sulfate',
  nitrate: 'nitrate',
  nitrite: 'nitrite',
  temperature: 'temperature',
  bacteria: 'bacteria',
  fungi: 'fungi',
  trampOil: 'tramp oil',
  dissolvedOxygen: 'dissolved oxygen',
  machineHours: 'machine hours',
  level: 'level',
  volume: 'volume in the sump',
  pumps: 'pumps',
  added: 'mix added',
  addedStrength: 'strength of what was added',
  addedConcentrate: 'concentrate added',
  addedWater: 'water added',
  water: 'which water',
  drawoff: 'drawn off',
  skimmed: 'tramp oil skimmed',
}
