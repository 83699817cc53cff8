import { message } from '@sumpbook/fluid'
import type { ThingKind } from '../entry/entries.ts'
import type { ThingField } from './thing-field.ts'

const band: ThingField[] = [
  { path: 'limits.concentration.low', label: message('Band from, %'), kind: 'percent' },
  {
    path: 'limits.concentration.target',
    label: message('Target, %'),
    hint: message('Empty: the middle'),
    kind: 'percent',
  },
  { path: 'limits.concentration.high', label: message('Band to, %'), kind: 'percent' },
]

const fluidName: ThingField[] = [{ path: 'name', label: message('Name of the fluid'), kind: 'text', required: true }]
const fluidClass: ThingField[] = [
  {
    path: 'class',
    label: message('Kind of fluid'),
    kind: 'choice',
    choices: [
      ['', message('not known')],
      ['soluble-oil', message('soluble oil')],
      ['semi-synthetic', message('semi-synthetic')],
      ['synthetic', message('synthetic')],
      ['straight-oil', message('straight oil (never mixed with water)')],
    ],
  },
]
const brixFactor: ThingField[] = [
  {
    path: 'brixFactor',
    label: message('Brix factor, % per °Brix'),
    hint: message(
      'From the fluid’s sheet, where it may be called refractometer factor. Without it no strength follows from a reading.',
    ),
    kind: 'number',
    ends: { above: 0, max: 20 },
  },
]

const fluidMore: ThingField[] = [
  {
    path: 'minTopUp',
    label: message('Leanest top-up its sheet allows, %'),
    hint: message('Empty: plain water is allowed'),
    kind: 'percent',
  },
  {
    path: 'maxMixStrength',
    label: message('Strongest mix poured, %'),
    hint: message('Empty: 20 %'),
    kind: 'percent',
    ends: { above: 0, max: 100 },
  },
]

const water: ThingField[] = [
  { path: 'name', label: message('Name of the water'), kind: 'text', required: true },
  {
    path: 'kind',
    label: message('Kind of water'),
    kind: 'choice',
    choices: [
      ['', message('not known')],
      ['tap', message('tap')],
      ['well', message('well')],
      ['softened', message('softened')],
      ['reverse-osmosis', message('reverse osmosis')],
      ['deionised', message('deionised')],
    ],
  },
]

const waterMore: ThingField[] = [
  {
    path: 'hardness',
    label: message('Hardness, ppm as CaCO3'),
    hint: message('Another unit may be typed: 14 °dH, 15 gpg'),
    kind: 'hardness',
  },
]

const sumpName: ThingField[] = [
  { path: 'name', label: message('Name of the machine or sump'), kind: 'text', required: true },
]
const sumpPlace: ThingField[] = [{ path: 'place', label: message('Where it stands'), kind: 'text' }]
const sumpMark: ThingField[] = [
  {
    path: 'fillVolume',
    label: message('Full mark'),
    hint: message('What it holds there, pumps stopped; often on the machine’s plate'),
    kind: 'volume',
    ends: { above: 0 },
  },
]

const sumpMore: ThingField[] = [
  {
    path: 'capacity',
    label: message('Brim'),
    hint: message('Empty: taken as a quarter above the mark'),
    kind: 'volume',
    ends: { above: 0 },
  },
  { path: 'minVolume', label: message('Pumps’ suction'), hint: message('Below it they draw air'), kind: 'volume' },
  { path: 'holdUp', label: message('Out in the lines'), hint: message('While the pumps run'), kind: 'volume' },
  { path: 'order', label: message('Place on the round'), hint: message('1 comes first'), kind: 'number' },
]

const dipTable: ThingField[] = [
  {
    path: 'dipTable',
    label: message('Dip table'),
    hint: message(
      'What it holds at a few levels of the dipstick, pumps stopped; the round then takes the dip as it is read',
    ),
    kind: 'dips',
  },
]

const container: ThingField[] = [
  { path: 'name', label: message('Name of the bucket'), kind: 'text', required: true },
  { path: 'capacity', label: message('It holds'), kind: 'volume', ends: { above: 0 } },
  {
    path: 'graduation',
    label: message('Between two of its marks'),
    hint: message('Empty: half a litre by eye'),
    kind: 'volume',
    ends: { above: 0 },
  },
]

const instrument: ThingField[] = [
  { path: 'name', label: message('Name of the instrument or the strips'), kind: 'text', required: true },
  {
    path: 'kind',
    label: message('What it is'),
    kind: 'choice',
    choices: [
      ['', message('not known')],
      ['refractometer', message('refractometer')],
      ['strip-ph', message('pH strips')],
      ['strip-nitrite', message('nitrite strips')],
      ['strip-hardness', message('hardness strips')],
      ['strip', message('strips that their name tells of')],
      ['ph-meter', message('pH meter')],
      ['dip-slide', message('dip slides')],
    ],
  },
  {
    path: 'pads',
    label: message('Pads of the strips'),
    hint: message(
      'As printed, the lowest first, with a blank between: 0 5 10 25 50. On the round each is a tap. Nitrite in mg/L, hardness in ppm as CaCO3.',
    ),
    kind: 'pads',
  },
  {
    path: 'resolution',
    label: message('Smallest step of its scale'),
    hint: message('A refractometer: in °Brix. Empty: 0.2'),
    kind: 'number',
    ends: { above: 0 },
  },
]

/** A counter in a hose or a line. */
const meter: ThingField[] = [
  { path: 'name', label: message('Name of the meter'), kind: 'text', required: true },
  {
    path: 'litresPerCount',
    label: message('Poured at one count'),
    hint: message('Empty: not known, and its counts tell no volume'),
    kind: 'volume',
    ends: { above: 0 },
  },
  { path: 'sump', label: message('Sump it fills'), kind: 'sump' },
  ...sumpPlace,
]

/** What a first recipe cannot do without, group by group as it is asked for; and what can wait. */
export const firstFields = {
  fluid: [...fluidName, ...brixFactor],
  band,
  fluidClass,
  sump: [...sumpName, ...sumpMark],
  sumpPlace,
  water,
  container,
} as const
/** What a thing of the first day may have. */
export const firstDayFields = {
  fluid: [...fluidName, ...brixFactor, ...band, ...fluidClass],
  sump: [...sumpName, ...sumpMark, ...sumpPlace],
  water,
  container,
} as const
/** All fields of a thing that this page can change. What it does not show stays as it is. */
export const allFields = {
  fluid: [...fluidName, ...fluidClass, ...brixFactor, ...band, ...fluidMore],
  water: [...water, ...waterMore],
  sump: [
    ...sumpName,
    ...sumpPlace,
    ...sumpMark,
    ...sumpMore,
    ...dipTable,
    ...band.map((field) => ({ ...field, hint: message('Empty: as its fluid’s') })),
  ],
  container,
  instrument,
  meter,
} as const

/** Of a sump that is new, what a first recipe asks of it, and what can wait; no field is in neither. */
export const newSumpFields = {
  first: [...sumpName, ...sumpMark],
  later: allFields.sump.filter(({ path }) => ![...sumpName, ...sumpMark].some((first) => first.path === path)),
} as const

export type FormKind = Exclude<ThingKind, 'shop' | 'mixer'>
