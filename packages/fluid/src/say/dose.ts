import { type CautionId, sayCautions } from '../cautions/cautions.ts'
import type { DoseAnswer, OverLabel } from '../dose/dose.ts'
import { measuredUnit } from '../dose/measured-amount.ts'
import type { DoseUnit } from '../dose/per-litre.ts'
import { say } from '../words/index.ts'
import { type Reader, sayNumber, sayVolume } from './units.ts'

/** What an additive is for. */
export type AdditiveKind = 'biocide' | 'fungicide' | 'ph' | 'defoamer' | 'corrosion' | 'other'

/** What a dose's sentences need to know beyond the dose. */
export interface DoseContext extends Reader {
  additive: { name: string; kind: AdditiveKind; unit: DoseUnit; low: number | null; label: string }
  sump: string
}

/** A dose in words. */
export interface DoseWords {
  headline: string
  why: string
  cautions: string[]
}

/** A dose, or why there is none, in sentences with what to mind. What is said as the most is never more than the most. */
export function sayDose(answer: DoseAnswer, context: DoseContext): DoseWords {
  const { additive } = context
  return {
    headline: headlineOf(answer, context),
    why: whyOf(answer, context),
    cautions: sayCautions(cautionsOf(answer, additive.kind)),
  }
}

function headlineOf(answer: DoseAnswer, { additive: { name, unit }, sump, ...reader }: DoseContext): string {
  switch (answer.outcome) {
    case 'dose': {
      const [least, most] = [
        sayDoseAmount(answer.least, unit, 'up', reader),
        sayDoseAmount(answer.most, unit, 'down', reader),
      ]
      const amount =
        answer.least >= answer.most || least === most ? most : say('{low} to {high}', { low: least, high: most })
      return say('{amount} of {name} into {sump}, never more', { amount, name, sump })
    }
    case 'nitrite-with-amines':
      return say('No {name} into {sump}', { name, sump })
    case 'cause-first':
      return say('No dose before the cause is known')
    case 'label-missing':
      return say('No dose: the label is not in the book')
    case 'doubt':
      return say('No dose while a record does not fit')
    case 'volume-unknown':
      return say('No dose: read the level first')
    case 'too-soon':
    case 'used-up':
    case 'unmeasured':
      return say('No {name} now', { name })
  }
}

function whyOf(answer: DoseAnswer, { additive: { name, unit, low, label }, sump, ...reader }: DoseContext): string {
  const near = (amount: number) => sayDoseAmount(amount, unit, 'near', reader)
  switch (answer.outcome) {
    case 'dose': {
      const volume = sayVolume(answer.volume, reader)
      const parts = [
        label === ''
          ? say('By its label, for {volume}: the least that {sump} is likely to hold.', { volume, sump })
          : say('By its label ({label}), for {volume}: the least that {sump} is likely to hold.', {
              label,
              volume,
              sump,
            }),
        ...(answer.already > 0
          ? [say('{amount} that went in already are taken off.', { amount: near(answer.already) })]
          : []),
        ...(low !== null && answer.thinnest < low * (1 - 1e-9)
          ? [say('Should it hold more, the dose may stay under the label’s least: read the level for a closer figure.')]
          : []),
      ]
      return parts.join(' ')
    }
    case 'nitrite-with-amines':
      return say('Nitrite and amines would come together. Where the fluid has no amines, write so at the fluid.')
    case 'cause-first':
      return say('Its pH has fallen since the fresh charge, and nobody has written why.')
    case 'label-missing':
      return answer.missing === 'dose'
        ? say(
            'What the label of {name} allows is not typed in: the least and the most in a litre of mix. Nothing is guessed.',
            { name },
          )
        : say(
            '{name} went in before, and the days between doses, or the most within so many days, are not typed in from its label.',
            { name },
          )
    case 'doubt':
      return say('Settle what does not fit first: the volume hangs on it.')
    case 'volume-unknown':
      return say('How much is in the sump is not known, and a dose is so much for each litre.')
    case 'too-soon':
      return say('The label asks for more days between doses: again in {days, plural, one {# day} other {# days}}.', {
        days: wholeDays(answer.inDays),
      })
    case 'used-up':
      return say(
        '{amount} went in already, and what the label’s most leaves is less than its least dose: again in {days, plural, one {# day} other {# days}}.',
        { amount: near(answer.already), days: wholeDays(answer.inDays) },
      )
    case 'unmeasured':
      return say(
        'An amount that nobody measured went in already, so what the label leaves cannot be told: again in {days, plural, one {# day} other {# days}}.',
        { days: wholeDays(answer.inDays) },
      )
  }
}

/** Days to wait, never fewer than the label has. */
const wholeDays = (days: number) => Math.max(1, Math.ceil(days - 1e-9))

function cautionsOf(answer: DoseAnswer, kind: AdditiveKind): CautionId[] {
  const ids: CautionId[] = []
  const isKilling = kind === 'biocide' || kind === 'fungicide'
  if (answer.outcome === 'nitrite-with-amines') return ['nitriteWithAmines', 'guidanceOnly']
  if (answer.outcome === 'cause-first') ids.push('phCauseFirst')
  if (isKilling) ids.push('biocideByLabel', 'biocideDoesNotRepair')
  if (answer.outcome === 'dose') {
    if (isKilling) ids.push('endotoxin')
    if (kind === 'corrosion') ids.push('nitriteWithAmines')
    if (kind === 'ph') ids.push('acidOrBleach')
    ids.push('additivesApart', 'additiveHandling')
  }
  return [...ids, 'guidanceOnly']
}

/** A dose that went in and goes against its label: "4.5 mL in each litre where its label allows 2 mL". */
export function sayOverLabel(over: OverLabel, unit: DoseUnit, reader: Pick<Reader, 'locale'>): string {
  const each = (amount: number) => `${sayNumber(amount, amount < 10 ? 2 : 1, reader, 0)} ${unit}`
  switch (over.kind) {
    case 'over-most':
      return say('{amount} in each litre, where its label allows {allowed}', {
        amount: each(over.perLitre),
        allowed: each(over.allowed),
      })
    case 'over-total':
      return say(
        '{amount} in each litre within {days, plural, one {# day} other {# days}}, where its label allows {allowed}',
        { amount: each(over.perLitre), days: over.days, allowed: each(over.allowed) },
      )
    case 'too-soon':
      return say('{days, plural, one {# day} other {# days}} after the dose before, where its label asks for {asked}', {
        days: Math.floor(over.daysBefore),
        asked: over.minimumDays,
      })
  }
}

/**
 * An amount as it is measured out, to three figures: millilitres or litres, fluid ounces, grams or ounces.
 *
 * @param towards the most is rounded down and the least up, so that what is said lies within what the label allows
 */
export function sayDoseAmount(amount: number, unit: DoseUnit, towards: 'up' | 'down' | 'near', reader: Reader): string {
  const { value, word } = inReadersUnit(amount, unit, reader.units)
  if (value === 0) return `0 ${word}`
  const step = 10 ** (Math.floor(Math.log10(value)) - 2)
  const steps = value / step
  const whole =
    towards === 'up' ? Math.ceil(steps - 1e-9) : towards === 'down' ? Math.floor(steps + 1e-9) : Math.round(steps)
  const decimals = Math.max(0, -Math.round(Math.log10(step)))
  return `${sayNumber(whole * step, decimals, reader, 0)} ${word}`
}

function inReadersUnit(amount: number, unit: DoseUnit, units: Reader['units']): { value: number; word: string } {
  const { word, size } = measuredUnit(unit, units)
  if (units !== 'metric' || amount < 1000) return { value: amount / size, word }
  return { value: amount / 1000, word: unit === 'mL' ? 'L' : 'kg' }
}

/** Why an amount is not written down: "Found 450 mL; by its label expected 200 mL to 400 mL." */
export function sayDoseFault(
  amount: number,
  { least, most }: { least: number; most: number },
  unit: DoseUnit,
  reader: Reader,
): string {
  const from = sayDoseAmount(least, unit, 'up', reader)
  const to = sayDoseAmount(most, unit, 'down', reader)
  return say('Found {found}; by its label expected {from} to {to}, never more.', {
    found: sayDoseAmount(amount, unit, 'near', reader),
    from,
    to,
  })
}
