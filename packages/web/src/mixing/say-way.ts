import {
  lowerFirst,
  type Part,
  type Reader,
  sayNumber,
  sayPercent,
  sayStrength,
  sayVolume,
  type Way,
} from '@sumpbook/fluid'

/** What the sentences about a way need besides it. */
export interface WayNames {
  /** The water that is poured. */
  water: string
  /** Settings that give a strength, by mixer. */
  settings: readonly { mixer: string; dial: number; percent: number }[]
  premixes: Readonly<Record<string, string>>
}

/** A way in one breath: "22 L of the mixer at 15 % (dial 8), then 16 L of deionised water". The stronger part comes last, as it is poured. */
export function sayWay({ parts }: Way, names: WayNames, reader: Reader): string {
  return parts.map((part) => `${sayVolume(part.volume, reader)} ${partWords(part, names, reader)}`).join(', then ')
}

function partWords({ kind, id, strength }: Part, { water, settings, premixes }: WayNames, reader: Reader): string {
  switch (kind) {
    case 'water':
      return `of ${lowerFirst(water)}`
    case 'premix':
      return `of ${premixes[id ?? ''] ?? 'the premix'} at ${sayStrength(strength, reader)}`
    case 'mixer': {
      const setting = settings.find(({ percent }) => percent === strength)
      const at = setting === undefined ? '' : `, dial ${sayNumber(setting.dial, 2, reader, 0)}`
      return `from ${lowerFirst(setting?.mixer ?? 'the mixer')} at ${sayStrength(strength, reader)}${at}`
    }
    case 'bucket-mix':
      return `mixed in buckets at ${sayStrength(strength, reader)}`
  }
}

/** Where a way leaves the sump: "7.4 %, 0.1 under the target" or "5.2 %, under its band". */
export function sayLanding(
  { result, offTarget, inBand }: Way,
  { target, band }: { target: number; band: { low: number; high: number } | null },
  reader: Reader,
): string {
  const at = sayPercent(result.concentration, reader)
  if (!inBand) return `${at}, ${result.concentration < (band?.low ?? 0) ? 'under' : 'above'} its band`
  if (offTarget < 0.05) return `${at}, on the target`
  return `${at}, ${sayNumber(offTarget, 1, reader)} ${result.concentration < target ? 'under' : 'above'} the target`
}
