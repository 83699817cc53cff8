import { type Reader, say, sayNumber, sayVolume } from '@sumpbook/fluid'
import type { Reading } from '../schema/entries/index.ts'
import type { Value } from '../schema/values.ts'

/** A reading of strength or level as it was found: "3.4 °Brix", "162 L", "84 mm". */
export function sayReading(entry: Reading, what: 'strength' | 'level', reader: Reader): string {
  const typed = entry.typed?.[what === 'strength' ? 'brix' : 'volume']
  if (what === 'strength') {
    if (entry.brix !== undefined) return `${sayValue(entry.brix, 1, reader)} °Brix`
    return entry.titration === undefined
      ? ''
      : say('{percent} % by titration', { percent: sayValue(entry.titration, 1, reader) })
  }
  if (entry.level !== undefined) return `${sayValue(entry.level, 0, reader)} mm`
  if (typeof entry.volume === 'number') return sayVolume(entry.volume, reader)
  return typed ?? ''
}

/** A figure or a class in words: "3.4", "25–50", "under 1000", "1000 or more". */
export function sayValue(value: Value, decimals: number, reader: Pick<Reader, 'locale'>): string {
  if (typeof value === 'number') return sayNumber(value, decimals, reader)
  if ('low' in value) return `${sayNumber(value.low, decimals, reader)}–${sayNumber(value.high, decimals, reader)}`
  if ('below' in value) return say('under {value}', { value: sayNumber(value.below, decimals, reader) })
  return say('{value} or more', { value: sayNumber(value.atLeast, decimals, reader) })
}
