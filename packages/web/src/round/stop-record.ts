import { message, type Reader, say, sayVolume } from '@sumpbook/fluid'
import type { Entry } from '../api/types.ts'
import { sayPassedBy, wordsOf } from '../entry/entries.ts'

/** What was written down at one stop, for the end of the round. */
export interface StopRecord {
  /** Ids of the entries, to see whether the book has them. */
  entries: string[]
  /** "4.1 °Brix, pH, an oil film", without what was poured. */
  read: string
  /** Litres that went in; null where somebody poured and did not measure. */
  water: number | null
  concentrate: number | null
  /** Litres drawn off. */
  drawn: number
  /** Why it was passed by or not poured; empty where it was neither. */
  why: string
  hasPhoto: boolean
}

/** What entries of one stop come to. */
export function recordOf(entries: readonly Entry[], reader: Reader): StopRecord {
  const pours = entries.filter((entry) => entry.kind === 'addition')
  const isMeasured = pours.every(({ volume, strength }) => volume !== undefined && strength !== undefined)
  const concentrate = pours.reduce((sum, { volume = 0, strength = 0 }) => sum + (volume * strength) / 100, 0)
  const volume = pours.reduce((sum, pour) => sum + (pour.volume ?? 0), 0)
  const skip = entries.find((entry) => entry.kind === 'skip')
  return {
    entries: entries.map(({ id }) => id),
    read: entries
      .filter(({ kind }) => kind === 'reading' || kind === 'observation')
      .map((entry) => readWords(entry, reader))
      .join(', '),
    water: isMeasured ? volume - concentrate : null,
    concentrate: isMeasured ? concentrate : null,
    drawn: entries.reduce((sum, entry) => sum + (entry.kind === 'drawoff' ? (entry.volume ?? 0) : 0), 0),
    why: skip === undefined ? '' : sayPassedBy(skip),
    hasPhoto: entries.some((entry) => typeof (entry as { photo?: unknown }).photo === 'string'),
  }
}

const names: Readonly<Record<string, string>> = {
  ph: message('pH {value}'),
  nitrite: message('nitrite {value}'),
  hardness: message('hardness {value}'),
}

/** A reading as it was typed, "160 L, 3.5 °Brix"; anything else in the book's words. */
function readWords(entry: Entry, reader: Reader): string {
  const typed = Object.entries(entry.typed ?? {})
  if (entry.kind !== 'reading' || typed.length === 0) return wordsOf(entry, reader)
  return typed
    .map(([field, text]) => (names[field] === undefined ? sayTyped(text) : say(names[field], { value: text })))
    .join(', ')
}

/** A level read by eye is recorded in English words; what was typed is quoted. */
function sayTyped(text: string): string {
  const quarter = /^about ([¼½¾]) of the mark$/.exec(text)?.[1]
  if (quarter !== undefined) return say('about {quarter} of the mark', { quarter })
  return text === 'at the mark' ? say('at the mark') : text
}

/** "31.1 L of water and 6.9 L of concentrate; once without measuring"; empty where nothing was. */
export function sayPoured(records: readonly StopRecord[], reader: Reader): string {
  const sum = (of: (record: StopRecord) => number) => records.reduce((total, record) => total + of(record), 0)
  const [water, concentrate, drawn] = [sum((r) => r.water ?? 0), sum((r) => r.concentrate ?? 0), sum((r) => r.drawn)]
  const blind = records.filter((record) => record.water === null).length
  const poured = water + concentrate
  const parts = [
    poured > 0
      ? concentrate > 0
        ? say('{water} of water and {concentrate} of concentrate', {
            water: sayVolume(water, reader),
            concentrate: sayVolume(concentrate, reader),
          })
        : say('{water} of water and no concentrate', { water: sayVolume(water, reader) })
      : '',
    blind === 0
      ? ''
      : say('{times, plural, one {once without measuring} other {# times without measuring}}', { times: blind }),
    drawn > 0 ? say('{volume} drawn off', { volume: sayVolume(drawn, reader) }) : '',
  ]
  return parts.filter((part) => part !== '').join('; ')
}
