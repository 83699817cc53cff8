import { message, type Reader, say, sayStrength, sayVolume } from '@sumpbook/fluid'
import type { Entry, SumpNow, Units } from '../api/types.ts'
import { envelope, type Stamp } from '../entry/stamp.ts'
import { readLitres, readStrength, withUnit } from '../fields/read.ts'
import { fieldVolume, shopUnits } from '../say/units.ts'
import { clockIn, instantIn } from '../say/zone-time.ts'
import type { MissingDraft, MissingKind } from './answers.ts'

/** The form as it stands in its fields. */
export interface MissingTexts {
  what: MissingKind
  volume: string
  strength: string
  water: string
  /** "2026-03-03T09:30", by the shop's clock. */
  at: string
}

export const missingKinds: readonly (readonly [MissingKind, string])[] = [
  ['mix', message('mix was poured in')],
  ['water', message('water alone was poured in')],
  ['concentrate', message('concentrate alone was poured in')],
  ['drawoff', message('fluid was taken out')],
  ['charge', message('it was emptied and charged afresh')],
]

/** Where a strength is asked for. */
export const hasStrength = (what: MissingKind): boolean => what === 'mix' || what === 'charge'
/** Where a water is asked for. */
export const hasWater = (what: MissingKind): boolean => what === 'mix' || what === 'charge' || what === 'water'

export const missingTexts = ({ what, litres, at }: MissingDraft, units: Units, timeZone: string): MissingTexts => ({
  what,
  volume: litres === null ? '' : fieldVolume(litres, units),
  strength: '',
  water: '',
  at: clockIn(timeZone, at),
})

/** What the texts say; a time to come is no time at which anything was forgotten. */
export function readMissing(
  texts: MissingTexts,
  { units, timeZone, now }: { units: Units; timeZone: string; now: number },
) {
  const ms = instantIn(timeZone, texts.at)
  const at =
    ms === null
      ? { fault: { found: texts.at === '' ? say('nothing') : `“${texts.at}”`, expected: say('a day and a time') } }
      : ms > now
        ? { fault: { found: texts.at.replace('T', ' '), expected: say('a time that has passed') } }
        : { value: ms }
  return {
    volume: readLitres(texts.volume, units, { above: 0 }),
    strength: hasStrength(texts.what) ? readStrength(texts.strength) : { value: null },
    at,
  }
}

/** The entry that was missing; null where a field is at fault, or where it says nothing. */
export function missingEntry(
  texts: MissingTexts,
  { sump, fluid }: Pick<SumpNow, 'sump' | 'fluid'>,
  {
    units,
    timeZone,
    now,
    stamp,
    reader,
  }: { units: Units; timeZone: string; now: number; stamp: Stamp; reader: Reader },
): Entry | null {
  const { volume, strength, at } = readMissing(texts, { units, timeZone, now })
  if ('fault' in volume || 'fault' in strength || 'fault' in at) return null
  // Without litres a pour still says that there was one; concentrate and what was taken out say nothing then.
  if (volume.value === null && (texts.what === 'concentrate' || texts.what === 'drawoff')) return null
  const of = { ...envelope({ ...stamp, at: new Date(at.value).toISOString() }), sump }
  const litres = volume.value === null ? {} : { volume: volume.value }
  const water = texts.water === '' ? {} : { water: texts.water }
  const strong = strength.value === null ? {} : { strength: strength.value }
  const { volumeWord } = shopUnits[units]
  const typed = {
    ...(volume.value === null ? {} : { volume: withUnit(texts.volume, volumeWord) }),
    ...(strength.value === null ? {} : { strength: withUnit(texts.strength, '%') }),
  }
  const note = 'written afterwards'
  switch (texts.what) {
    case 'mix':
      return { ...of, kind: 'addition', ...litres, ...strong, ...water, fluid: fluid.id, typed, note }
    case 'water':
      return {
        ...of,
        kind: 'addition',
        ...litres,
        strength: 0,
        ...water,
        typed: { ...typed, strength: sayStrength(0, reader) },
        note,
      }
    case 'concentrate':
      return {
        ...of,
        kind: 'addition',
        concentrate: volume.value!,
        fluid: fluid.id,
        typed: { concentrate: sayVolume(volume.value!, reader) },
        note,
      }
    case 'drawoff':
      return { ...of, kind: 'drawoff', volume: volume.value!, typed, note }
    case 'charge':
      return { ...of, kind: 'charge', ...litres, ...strong, ...water, fluid: fluid.id, typed, note }
  }
}
