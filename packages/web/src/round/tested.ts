import { message, say, sayNumber, speech } from '@sumpbook/fluid'
import type { Entry } from '../api/types.ts'
import type { Stamp } from '../entry/stamp.ts'
import type { Fault } from '../fields/read.ts'
import { decimalSign } from '../say/units.ts'
import { type Read, readClass } from '../tests/read-class.ts'
import { type SampleWay, sampleEntry, testReading } from '../tests/test-entries.ts'

export type TestKey = 'ph' | 'nitrite' | 'hardness'

/** What is tested at a sump beside its strength, in the order of the calendar. */
export const testFields: readonly {
  key: TestKey
  label: string
  unit: string
  ends: { min: number; max: number }
  /** Beyond these it is more often a slip than a coolant (common practice, no source). */
  usual: { min: number; max: number }
}[] = [
  { key: 'ph', label: message('pH'), unit: '', ends: { min: 0, max: 14 }, usual: { min: 6, max: 11 } },
  { key: 'nitrite', label: message('Nitrite'), unit: 'mg/L', ends: { min: 0, max: 1000 }, usual: { min: 0, max: 200 } },
  {
    key: 'hardness',
    label: message('Hardness'),
    unit: 'ppm',
    ends: { min: 0, max: 10_000 },
    usual: { min: 0, max: 2000 },
  },
]

/** Tests as they stand in the fields of one stop. */
export interface Tested {
  texts: Readonly<Partial<Record<TestKey, string>>>
  /** The strip whose pad was tapped, by id. */
  strips: Readonly<Partial<Record<TestKey, string>>>
  /** Samples taken here whose result comes later. */
  taken: readonly SampleWay[]
  /** Texts that were said to be right though unusual. */
  confirmed: Readonly<Partial<Record<TestKey, string>>>
}

export const nothingTested: Tested = { texts: {}, strips: {}, taken: [], confirmed: {} }

export interface TestsRead {
  found: Partial<Record<TestKey, Read>>
  faults: Partial<Record<TestKey, Fault>>
  /** Asked once. */
  questions: { key: TestKey; text: string; question: string }[]
}

/** What the texts say. "9." on its way to "9.2" is no fault. */
export function readTested({ texts, confirmed }: Tested): TestsRead {
  const read: TestsRead = { found: {}, faults: {}, questions: [] }
  for (const { key, label, ends, usual } of testFields) {
    const text = texts[key] ?? ''
    const one = readClass(text.trim().replace(/(?<=\d)[.,]$/, ''), ends)
    if ('fault' in one) read.faults[key] = one.fault
    else if (one.value !== null) {
      read.found[key] = one.value
      if (
        typeof one.value === 'number' &&
        (one.value < usual.min || one.value > usual.max) &&
        confirmed[key] !== text
      ) {
        const value = sayNumber(one.value, key === 'ph' ? 1 : 0)
        const question = say('{test} {value} is far from what a coolant shows. Is that right?', {
          test: say(label),
          value,
        })
        read.questions.push({ key, text, question })
      }
    }
  }
  return read
}

export const hasTests = ({ texts, taken }: Tested): boolean =>
  taken.length > 0 || Object.values(texts).some((text) => text.trim() !== '')

/** The readings of the tests, one for each strip and one for what no strip showed, and the samples taken. */
export function testedEntries(tested: Tested, sump: string, stamp: Stamp): Entry[] {
  const { found } = readTested(tested)
  const byStrip = Map.groupBy(
    testFields.filter(({ key }) => found[key] !== undefined),
    ({ key }) => tested.strips[key] ?? null,
  )
  const readings = [...byStrip].map(([strip, fields]) => {
    const typed = fields.map(({ key, unit }) => [key, `${tested.texts[key]!.trim()} ${unit}`.trim()] as const)
    const confirmed = fields
      .filter(({ key }) => tested.confirmed[key] === tested.texts[key])
      .map(({ key }) => `/${key}`)
    const reading = testReading(
      sump,
      Object.fromEntries(fields.map(({ key }) => [key, found[key]!])),
      Object.fromEntries(typed),
      stamp,
    )
    return {
      ...reading,
      ...(strip === null ? {} : { instrument: strip }),
      ...(confirmed.length === 0 ? {} : { confirmed }),
    } as Entry
  })
  return [...readings, ...tested.taken.map((way) => sampleEntry(sump, way, stamp))]
}

/** A kind of strip of the shop, as far as it says what it shows. */
export interface Strip {
  id: string
  name: string
  pads: readonly number[]
}

/** How strips are called, in any of the languages a shop may name them in. */
const stripWords: Readonly<Record<TestKey, RegExp>> = {
  ph: /\bph\b/i,
  nitrite: /nitrit/i,
  hardness: /hardness|härte|dureza/i,
}

/** The strip that shows a test: one with pads whose kind or name says so; null without. */
export function stripFor(
  key: TestKey,
  instruments: readonly { id: string; name: string; [field: string]: unknown }[],
): Strip | null {
  const word = stripWords[key]
  for (const { id, name, pads, kind } of instruments) {
    if (!Array.isArray(pads) || pads.length === 0) continue
    if (word.test(name) || (typeof kind === 'string' && word.test(kind))) return { id, name, pads: pads as number[] }
  }
  return null
}

/** A pad as it is printed, in the signs of the reader's numbers. */
export const padWords = (pad: number): string => String(pad).replace('.', decimalSign(speech().numbers))

/** Text with either sign, as pads are compared with. */
const plain = (text: string) => text.replaceAll(',', '.')

/**
 * What a tap on a pad makes of what stands there: the pad; with a neighbour of it there already, the class between the two; the same pad again,
 * nothing.
 */
export function padTapped(pad: number, text: string, pads: readonly number[]): string {
  const place = pads.indexOf(pad)
  const before = Number(plain(text))
  if (text !== '' && before === pad) return ''
  const near = text === '' ? -1 : pads.indexOf(before)
  if (near >= 0 && Math.abs(near - place) === 1)
    return `${padWords(Math.min(pad, before))}-${padWords(Math.max(pad, before))}`
  return padWords(pad)
}

/** Whether a pad is part of what stands there. */
export const isPadIn = (pad: number, text: string): boolean => plain(text).split('-').includes(String(pad))
