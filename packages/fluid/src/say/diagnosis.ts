import { sayCautions } from '../cautions/cautions.ts'
import type { CauseReason, Diagnosis, RankedCause } from '../diagnosis/diagnose.ts'
import type { Evidence } from '../diagnosis/evidence.ts'
import { causeName, sayFinding } from '../diagnosis/finding-words.ts'
import type { Frequency } from '../diagnosis/network.ts'
import type { ReadField, ReadValue } from '../diagnosis/readings.ts'
import { sayRemedy } from '../diagnosis/remedy.ts'
import { sayStop } from '../diagnosis/stops.ts'
import { message, say } from '../words/index.ts'
import { sayList } from './phrases.ts'
import { sayUnit } from './unit-word.ts'
import { type Reader, sayNumber, sayVolume } from './units.ts'

/** A diagnosis as people read it, the same on command line, API and page. */
export interface SaidDiagnosis {
  causes: SaidCause[]
  /** The test that would tell most; null where none is worth its while. */
  nextCheck: { check: string; text: string; gain: number } | null
  /** What must be done at once, most dangerous first; empty without. */
  stop: string[]
  notes: string[]
  cautions: string[]
}

export interface SaidCause {
  cause: string
  /** The same as a heading: "Bacterial growth". */
  name: string
  /** What is going on, one sentence. */
  says: string
  probability: number
  because: string[]
  checks: readonly string[]
  remedies: readonly string[]
}

/** A diagnosis in sentences. @param notUnderstood words of entries that the list of signs does not have */
export function sayDiagnosis(
  diagnosis: Diagnosis,
  reader: Reader,
  { notUnderstood = [] }: { notUnderstood?: readonly string[] } = {},
): SaidDiagnosis {
  const { causes, nextCheck, stops } = diagnosis
  return {
    causes: causes.map((ranked) => ({
      cause: ranked.cause.id,
      name: say(causeName(ranked.cause.id)),
      says: say(ranked.cause.says),
      probability: ranked.probability,
      because: sayBecause(ranked, reader),
      checks: ranked.cause.checks.map((check) => say(check)),
      remedies: ranked.cause.remedies.map(sayRemedy),
    })),
    nextCheck:
      nextCheck === null
        ? null
        : {
            check: nextCheck.id,
            text: say('{check}: of what is not known yet it tells most. It takes {takes}.', {
              check: say(nextCheck.does),
              takes: say(nextCheck.takes),
            }),
            gain: nextCheck.gain,
          },
    stop: stops.map(sayStop),
    notes: notesOf(diagnosis, notUnderstood),
    cautions: [
      ...(stops.some(({ followUp }) => followUp)
        ? [
            say(
              'Condition goes before economy: a split, septic or complained-of sump is dealt with now, whatever its age or price.',
            ),
          ]
        : []),
      ...sayCautions(['guidanceOnly']),
    ],
  }
}

/** Why a cause stands where it does, a sentence for each weight of reason. */
export function sayBecause({ speaksFor, speaksAgainst }: RankedCause, reader: Reader): string[] {
  const words = (reasons: readonly CauseReason[]) => sayList(reasons.map((reason) => sayEvidence(reason, reader)))
  const seen = speaksFor.map(({ frequency }) => frequency).filter((one, n, all) => all.indexOf(one) === n)
  return [
    ...seen.map((frequency) => {
      const those = speaksFor.filter((reason) => reason.frequency === frequency)
      return say(speaksForWords[frequency], { findings: words(those) })
    }),
    ...(speaksAgainst.length === 0 ? [] : [say('Against it: {findings}.', { findings: words(speaksAgainst) })]),
  ]
}

const speaksForWords: Record<Frequency, string> = {
  'nearly always': message('Nearly always seen with it: {findings}.'),
  often: message('Often seen with it: {findings}.'),
  sometimes: message('Sometimes seen with it: {findings}.'),
  rarely: message('Rarely, but possible: {findings}.'),
}

/** One finding in words: "pH 8.1, under its limit of 8.5", "no foam". */
export function sayEvidence({ finding, present, ground }: Evidence, reader: Reader): string {
  switch (ground.kind) {
    case 'sign':
      return present ? sayFinding(finding) : say('no {finding}', { finding: sayFinding(finding) })
    case 'limit': {
      const { field, value, side, limit } = ground
      const stands = { read: sayRead(field, value, reader), limit: sayFigure(field, limit, reader) }
      if (side === 'low') {
        return present
          ? say('{read} (under its limit of {limit})', stands)
          : say('{read} (not under its limit of {limit})', stands)
      }
      return present
        ? say('{read} (above its limit of {limit})', stands)
        : say('{read} (not above its limit of {limit})', stands)
    }
    case 'change': {
      const [from, to] = [sayFigure(ground.field, ground.from, reader), sayFigure(ground.field, ground.to, reader)]
      return say('{what} {to} after {from} before', { what: say(fieldWords[ground.field][0]), from, to })
    }
    case 'level':
      return say(
        '{level, select, low {level low} other {level high}} and {strength, select, rich {strength above its target} weak {strength under its target} other {strength as it should be}}',
        { level: ground.level, strength: ground.strength },
      )
    case 'methods':
      return say('{refractometer} % by refractometer beside {titration} % by titration', {
        refractometer: sayNumber(ground.refractometer, 1, reader),
        titration: sayNumber(ground.titration, 1, reader),
      })
    case 'yet':
      return say('rust though the strength reads {strength} %', { strength: sayNumber(ground.strength, 1, reader) })
  }
}

const fieldWords: Record<ReadField, readonly [words: string, unit: string, decimals: number]> = {
  concentration: [message('strength'), '%', 1],
  brix: [message('refractometer'), '°Brix', 1],
  titration: [message('strength by titration'), '%', 1],
  ph: [message('pH'), '', 1],
  hardness: [message('hardness'), 'ppm', 0],
  chloride: [message('chloride'), 'mg/L', 0],
  conductivity: [message('conductivity'), 'mS/cm', 2],
  sulfate: [message('sulfate'), 'mg/L', 0],
  nitrate: [message('nitrate'), 'mg/L', 0],
  nitrite: [message('nitrite'), 'mg/L', 0],
  temperature: [message('temperature'), '°C', 0],
  bacteria: [message('bacteria'), 'CFU/mL', 0],
  fungi: [message('fungi'), 'CFU/mL', 0],
  trampOil: [message('tramp oil'), '%', 1],
  dissolvedOxygen: [message('oxygen'), 'mg/L', 1],
  level: [message('level'), 'mm', 0],
  volume: [message('level'), 'L', 0],
}

/** A reading with its name: "bacteria 1,000,000 CFU/mL or more". */
export function sayRead(field: ReadField, value: ReadValue, reader: Reader): string {
  const what = say(fieldWords[field][0])
  const figure = (one: number) => sayFigure(field, one, reader)
  if (typeof value === 'number') return `${what} ${figure(value)}`
  if ('low' in value) {
    const [low, high] = [figure(value.low), figure(value.high)]
    const unit = / .+$/.exec(high)?.[0] ?? ''
    return `${what} ${unit !== '' && low.endsWith(unit) ? low.slice(0, -unit.length) : low}–${high}`
  }
  return 'below' in value
    ? say('{what} under {figure}', { what, figure: figure(value.below) })
    : say('{what} {figure} or more', { what, figure: figure(value.atLeast) })
}

function sayFigure(field: ReadField, value: number, reader: Reader): string {
  if (field === 'volume') return sayVolume(value, reader)
  const [, unit, decimals] = fieldWords[field]
  return `${sayNumber(value, decimals, reader)} ${sayUnit(unit)}`.trim()
}

function notesOf({ causes, stops, unjudged, leftOut }: Diagnosis, notUnderstood: readonly string[]): string[] {
  const notes: string[] = []
  if (stops.some(({ keepAway }) => keepAway))
    notes.push(say('No test at the sump before what stands under “at once” is dealt with.'))
  if (causes.length === 0)
    notes.push(say('Nothing of what was given speaks for a fault; that does not show that there is none.'))
  else
    notes.push(
      say(
        'Several causes can be at work at once. Take the order, not the digits: nobody has counted how often each shows what.',
      ),
    )
  if (unjudged.length > 0) {
    notes.push(
      say('Not judged, since there is no limit or factor to hold it against: {fields}.', {
        fields: sayList(unjudged.map((field) => say(fieldWords[field][0]))),
      }),
    )
  }
  if (notUnderstood.length > 0) {
    notes.push(
      say('Not understood, and left aside: {words}.', {
        words: sayList(notUnderstood.map((word) => say('“{word}”', { word }))),
      }),
    )
  }
  if (leftOut.length > 0) {
    notes.push(
      say('Too much at once to weigh; left out, as telling least: {findings}.', {
        findings: sayList(leftOut.map(sayFinding)),
      }),
    )
  }
  return notes
}
