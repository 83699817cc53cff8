import {
  lowerFirst,
  type Part,
  type Reader,
  say,
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
  const [first = '', ...more] = parts.map((part) => sayPart(part, names, reader))
  return more.reduce((before, next) => say('{before}, then {next}', { before, next }), first)
}

function sayPart(part: Part, { water, settings, premixes }: WayNames, reader: Reader): string {
  const { kind, id } = part
  const [volume, strength] = [sayVolume(part.volume, reader), sayStrength(part.strength, reader)]
  switch (kind) {
    case 'water':
      return say('{volume} of {water}', { volume, water: lowerFirst(water) })
    case 'premix':
      return say('{volume} of {premix} at {strength}', {
        volume,
        premix: premixes[id ?? ''] ?? say('the premix'),
        strength,
      })
    case 'mixer': {
      const setting = settings.find(({ percent }) => percent === part.strength)
      if (setting === undefined) return say('{volume} from the mixer at {strength}', { volume, strength })
      return say('{volume} from {mixer} at {strength}, dial {dial}', {
        volume,
        mixer: lowerFirst(setting.mixer),
        strength,
        dial: sayNumber(setting.dial, 2, reader, 0),
      })
    }
    case 'bucket-mix':
      return say('{volume} mixed in buckets at {strength}', { volume, strength })
  }
}

/** Where a way leaves the sump: "7.4 %, 0.1 under the target" or "5.2 %, under its band". */
export function sayLanding(
  { result, offTarget, inBand }: Way,
  { target, band }: { target: number; band: { low: number; high: number } | null },
  reader: Reader,
): string {
  const at = { percent: sayPercent(result.concentration, reader) }
  if (!inBand) {
    return say(result.concentration < (band?.low ?? 0) ? '{percent}, under its band' : '{percent}, above its band', at)
  }
  if (offTarget < 0.05) return say('{percent}, on the target', at)
  return say(
    result.concentration < target ? '{percent}, {amount} under the target' : '{percent}, {amount} above the target',
    { ...at, amount: sayNumber(offTarget, 1, reader) },
  )
}
