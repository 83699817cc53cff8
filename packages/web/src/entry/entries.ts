import { inLanguage, type Reader, say, sayNumber, sayReason, sayStrength, sayVolume, speech } from '@sumpbook/fluid'
import type { Entry, EntryOf, Recipe, SumpItem, SumpNow, TodayDue } from '../api/types.ts'
import { withUnit } from '../fields/read.ts'
import type { Typed } from '../round/typed.ts'
import type { Verdict } from '../round/verdict.ts'
import { envelope, type Stamp } from './stamp.ts'

/** The reading that was typed at a sump; null where nothing was. */
export function readingEntry(typed: Typed, { level, brix }: Verdict, sump: string, stamp: Stamp): Entry | null {
  if (level === null && brix === null) return null
  const confirmed = Object.entries(typed.confirmed)
    .filter(([pointer, text]) => text === (pointer === '/brix' ? typed.brix : typed.level))
    .map(([pointer]) => pointer)
  return {
    ...envelope(stamp),
    kind: 'reading',
    sump,
    ...(level === null ? {} : { ...level.entry, pumps: typed.pumps }),
    ...(brix === null ? {} : { brix }),
    typed: { ...level?.typed, ...(brix === null ? {} : { brix: withUnit(typed.brix, '°Brix') }) },
    ...(confirmed.length === 0 ? {} : { confirmed }),
  }
}

/** Signs seen, smelt or felt; null where everything was fine or nobody looked. */
export function observationEntry(
  signs: readonly string[],
  sump: string,
  stamp: Stamp,
  { severity = '', note = '' }: { severity?: string; note?: string } = {},
): Entry | null {
  if (signs.length === 0) return null
  return {
    ...envelope(stamp),
    kind: 'observation',
    sump,
    signs: [...signs],
    ...(severity === '' ? {} : { severity }),
    ...(note === '' ? {} : { note }),
  }
}

/** What was done about signs that somebody must answer for. */
export function followUpEntry(entries: readonly string[], note: string, sump: string, stamp: Stamp): Entry {
  return { ...verdictEntry(entries, followedUp, sump, stamp), note }
}

const followedUp = 'followed up'

type Written = Pick<SumpItem, 'recipe' | 'dispensed'>

/** Whether a tap can write the recipe down as poured. A change of the charge is a cleanout and is never one tap. */
export const isPour = ({ action, add, drawOff }: Recipe): boolean =>
  action !== 'change' && (add !== null || drawOff > 0)

/**
 * The recipe as poured: what was drawn off first, then what went in. Where it was said in buckets, what the buckets
 * make is what was poured; without buckets the amounts as shown, to the hundredth.
 */
export function pouredAsWritten(
  { recipe, dispensed }: Written,
  sump: Pick<SumpNow, 'sump' | 'fluid'>,
  reader: Reader,
  stamp: Stamp,
): Entry[] {
  if (!isPour(recipe)) throw new RangeError(`action is ${recipe.action}, expected one that pours or draws off`)
  const { add, drawOff } = recipe
  const poured = dispensed ?? add
  const entries: Entry[] = []
  if (drawOff > 0) entries.push(drawoffEntry(hundredth(drawOff), sump.sump, reader, stamp))
  if (add !== null && poured !== null) {
    const pour = { volume: hundredth(poured.volume), strength: hundredth(poured.strength) }
    entries.push(additionEntry({ ...pour, water: add.waters[0]?.id ?? null }, sump, reader, stamp))
  }
  return entries
}

const hundredth = (value: number) => Number(value.toFixed(2))

/** What went into a sump. */
export interface Poured {
  /** Litres; null where it was filled to the mark without measuring. */
  volume: number | null
  /** Null where nobody knows. */
  strength: number | null
  water: string | null
  /** As typed, where it was. */
  typed?: Record<string, string>
}

export function additionEntry(
  { volume, strength, water, typed }: Poured,
  { sump, fluid }: Pick<SumpNow, 'sump' | 'fluid'>,
  reader: Reader,
  stamp: Stamp,
): Entry {
  return {
    ...envelope(stamp),
    kind: 'addition',
    sump,
    ...(volume === null ? { toMark: true } : { volume }),
    ...(strength === null ? {} : { strength }),
    ...(water === null ? {} : { water }),
    fluid: fluid.id,
    typed: typed ?? {
      ...(volume === null ? {} : { volume: sayVolume(volume, reader) }),
      ...(strength === null ? {} : { strength: sayStrength(strength, reader) }),
    },
  }
}

export function drawoffEntry(volume: number, sump: string, reader: Reader, stamp: Stamp, typed?: string): Entry {
  return { ...envelope(stamp), kind: 'drawoff', sump, volume, typed: { volume: typed ?? sayVolume(volume, reader) } }
}

/** A machine passed by: locked, down, or a pour that was not made. */
export function skipEntry(reason: string, note: string, sump: string, stamp: Stamp): Entry {
  return { ...envelope(stamp), kind: 'skip', sump, reason, ...(note === '' ? {} : { note }) }
}

/** One entry set aside, with the reason; the record keeps both. */
export function voidEntry(entry: string, reason: string, sump: string | null, stamp: Stamp): Entry {
  return { ...envelope(stamp), kind: 'void', entry, reason, ...(sump === null ? {} : { sump }) }
}

/** A line of Today put off, with the reason and the instant or day on which it is back. */
export function snoozeEntry(
  line: { key: string; sump: string | null; about?: TodayDue['about'] },
  { why, until }: { why: string; until: string },
  stamp: Stamp,
): Entry {
  const { key, sump, about = null } = line
  const of = sump === null ? { about: about ?? { kind: 'shop' } } : { sump }
  return { ...envelope(stamp), kind: 'snooze', ...of, what: key, why, until } as Entry
}

/** A dose of an additive, as it was measured out. */
export function doseEntry(
  {
    additive: { id, name, label },
    unit,
    amount,
    reason,
    typed,
  }: {
    additive: { id: string; name: string; label: string }
    unit: 'mL' | 'g'
    /** Millilitres or grams. */
    amount: number
    reason: string
    typed: string
  },
  sump: string,
  stamp: Stamp,
): Entry {
  return {
    ...envelope(stamp),
    kind: 'addition',
    sump,
    additive: {
      ...{ id, name },
      ...(unit === 'g' ? { grams: Number(amount.toFixed(3)) } : { litres: Number((amount / 1000).toFixed(6)) }),
      ...(reason === '' ? {} : { reason }),
      ...(label === '' ? {} : { label }),
    },
    typed: { additive: typed },
  }
}

/** Somebody has read the note of the shift before; the step as the book knows it. */
export function noteReadEntry(note: string, stamp: Stamp): Entry {
  return { ...envelope(stamp), kind: 'signoff', about: { kind: 'shop' }, step: `handover ${note}` }
}

/** A shift's words to the next. */
export function handoverEntry(text: string, shop: string | null, stamp: Stamp): Entry {
  return {
    ...envelope(stamp),
    kind: 'handover',
    about: { kind: 'shop', ...(shop === null ? {} : { id: shop }) },
    text,
  } as Entry
}

/** What was behind a doubt: one of its kinds, or `stands` where the records are right. */
export function verdictEntry(entries: readonly string[], answer: string, sump: string, stamp: Stamp): Entry {
  return { ...envelope(stamp), kind: 'verdict', sump, entries: [...entries], answer }
}

export type ThingKind = 'sump' | 'fluid' | 'water' | 'container' | 'instrument' | 'meter' | 'mixer' | 'shop'

/** A thing of the shop, new or changed; `was` holds what the changed fields were before. */
export function setupEntry(
  about: { kind: ThingKind; id: string },
  changes: Record<string, unknown>,
  was: Record<string, unknown> | null,
  stamp: Stamp,
  /** The day from which it holds; from now on without it. */
  from?: string,
): Entry {
  return {
    ...envelope(stamp),
    kind: 'setup',
    about,
    changes,
    ...(was === null ? {} : { was }),
    ...(from === undefined ? {} : { from }),
  }
}

/** What was measured of a water, or of a mixer at a setting of its dial; `typed` as it was typed. */
export function measurementEntry(
  kind: 'analysis' | 'check',
  about: { kind: 'water' | 'mixer'; id: string },
  { values, typed, note = '' }: { values: Record<string, number>; typed: Record<string, string>; note?: string },
  stamp: Stamp,
): Entry {
  return { ...envelope(stamp), kind, about, ...values, typed, ...(note === '' ? {} : { note }) } as Entry
}

/** What an entry says, in a few words: "added 38 L". */
export function wordsOf(entry: Entry, reader: Reader): string {
  switch (entry.kind) {
    case 'reading':
      return readingWords(entry, reader)
    case 'addition':
      return additionWords(entry, reader)
    case 'drawoff':
      return say('drew off {volume}', { volume: sayVolume(entry.volume ?? 0, reader) })
    case 'observation':
      return (entry.signs ?? []).length === 0
        ? say('looked and smelt, all fine')
        : (entry.signs ?? []).map(recorded).join(', ')
    case 'skip':
      return sayPassedBy(entry)
    case 'void':
      return say('an entry set aside')
    case 'verdict':
      return entry.answer === followedUp ? say('what was done about a sign') : say('a doubt settled')
    case 'charge':
      return entry.volume === undefined
        ? say('charged')
        : say('charged {volume}', { volume: sayVolume(entry.volume, reader) })
    case 'analysis':
      return say('water analysis')
    case 'snooze':
      return say('put off')
    case 'handover':
      return say('a note to the next shift')
    case 'signoff':
      return signoffWords(entry)
    case 'setup':
      return say('set up {fields}', { fields: Object.keys(entry.changes).join(', ') })
    default:
      return entry.kind
  }
}

/** A word of the published lists in the language that is spoken; what a person wrote is no message, and stands as it is. */
const recorded = (word: string): string => inLanguage(speech().language, word)

/** Why a machine was passed by, with the note where there is one: "not poured: no concentrate". */
export function sayPassedBy({ reason, note = '' }: Pick<EntryOf<'skip'>, 'reason' | 'note'>): string {
  const words = reason === undefined ? say('passed by') : recorded(reason)
  return note === '' ? words : `${words}: ${sayReason(note)}`
}

function readingWords(entry: EntryOf<'reading'>, reader: Reader): string {
  if (typeof entry.brix === 'number') return `${sayNumber(entry.brix, 1, reader)} °Brix`
  if (entry.pending === true)
    return entry.method === undefined
      ? say('sample taken')
      : say('sample taken, {method}', { method: recorded(entry.method) })
  if (entry.answers !== undefined) return say('result of a sample')
  const tests = [
    entry.ph === undefined ? '' : say('pH'),
    entry.nitrite === undefined ? '' : say('nitrite'),
    entry.hardness === undefined ? '' : say('hardness'),
  ].filter((test) => test !== '')
  return tests.length === 0 ? say('level') : tests.join(', ')
}

function signoffWords({ step, claim }: EntryOf<'signoff'>): string {
  if (claim !== undefined) return step === 'released' ? say('let go') : say('taken on')
  return step === undefined ? say('signed') : say('signed: {step}', { step })
}

function additionWords({ volume, concentrate, toMark, additive }: EntryOf<'addition'>, reader: Reader): string {
  if (additive !== undefined) {
    return additive.name === undefined ? say('a dose of an additive') : say('a dose of {name}', { name: additive.name })
  }
  if (volume !== undefined) return say('added {volume}', { volume: sayVolume(volume, reader) })
  if (concentrate !== undefined) return say('added {volume} of concentrate', { volume: sayVolume(concentrate, reader) })
  return toMark === true ? say('filled to the mark') : say('added an unmeasured amount')
}

/** The same with its sump's name, for the queue of things to send. */
export const labelOf = (entry: Entry, name: string, reader: Reader): string => `${name}: ${wordsOf(entry, reader)}`
