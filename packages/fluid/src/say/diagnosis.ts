import { sayCautions } from '../cautions/cautions.ts'
import type { CauseReason, Diagnosis, RankedCause } from '../diagnosis/diagnose.ts'
import type { Evidence } from '../diagnosis/evidence.ts'
import { causeName, sayFinding } from '../diagnosis/finding-words.ts'
import type { Frequency } from '../diagnosis/network.ts'
import type { ReadField, ReadValue } from '../diagnosis/readings.ts'
import { sayRemedy } from '../diagnosis/remedy.ts'
import { sayStop } from '../diagnosis/stops.ts'
import { say } from '../words/index.ts'
import { sayList } from './phrases.ts'
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
            text: `${say(nextCheck.does)}: of what is not known yet it tells most. It takes ${say(nextCheck.takes)}.`,
            gain: nextCheck.gain,
          },
    stop: stops.map(sayStop),
    notes: notesOf(diagnosis, notUnderstood),
    cautions: [
      ...(stops.some(({ followUp }) => followUp)
        ? [
            'Condition goes before economy: a split, septic or complained-of sump is dealt with now, whatever its age or price.',
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
      return `${speaksForWords[frequency]} ${words(those)}.`
    }),
    ...(speaksAgainst.length === 0 ? [] : [`Against it: ${words(speaksAgainst)}.`]),
  ]
}

const speaksForWords: Record<Frequency, string> = {
  'nearly always': 'Nearly always seen with it:',
  often: 'Often seen with it:',
  sometimes: 'Sometimes seen with it:',
  rarely: 'Rarely, but possible:',
}

/** One finding in words: "pH 8.1, under its limit of 8.5", "no foam". */
export function sayEvidence({ finding, present, ground }: Evidence, reader: Reader): string {
  switch (ground.kind) {
    case 'sign':
      return present ? sayFinding(finding) : `no ${sayFinding(finding)}`
    case 'limit': {
      const { field, value, side, limit } = ground
      const stands = side === 'low' ? (present ? 'under' : 'not under') : present ? 'above' : 'not above'
      return `${sayRead(field, value, reader)} (${stands} its limit of ${sayFigure(field, limit, reader)})`
    }
    case 'change': {
      const [from, to] = [sayFigure(ground.field, ground.from, reader), sayFigure(ground.field, ground.to, reader)]
      return `${fieldWords[ground.field][0]} ${to} after ${from} before`
    }
    case 'level':
      return `level ${ground.level === 'low' ? 'low' : 'high'} and strength ${strengthWords[ground.strength]}`
    case 'methods':
      return `${sayNumber(ground.refractometer, 1, reader)} % by refractometer beside ${sayNumber(ground.titration, 1, reader)} % by titration`
    case 'yet':
      return `rust though the strength reads ${sayNumber(ground.strength, 1, reader)} %`
  }
}

const strengthWords = { rich: 'above its target', right: 'as it should be', weak: 'under its target' } as const

const fieldWords: Record<ReadField, readonly [words: string, unit: string, decimals: number]> = {
  concentration: ['strength', '%', 1],
  brix: ['refractometer', '°Brix', 1],
  titration: ['strength by titration', '%', 1],
  ph: ['pH', '', 1],
  hardness: ['hardness', 'ppm', 0],
  chloride: ['chloride', 'mg/L', 0],
  conductivity: ['conductivity', 'mS/cm', 2],
  sulfate: ['sulfate', 'mg/L', 0],
  nitrate: ['nitrate', 'mg/L', 0],
  nitrite: ['nitrite', 'mg/L', 0],
  temperature: ['temperature', '°C', 0],
  bacteria: ['bacteria', 'CFU/mL', 0],
  fungi: ['fungi', 'CFU/mL', 0],
  trampOil: ['tramp oil', '%', 1],
  dissolvedOxygen: ['oxygen', 'mg/L', 1],
  level: ['level', 'mm', 0],
  volume: ['level', 'L', 0],
}

/** A reading with its name: "bacteria 1,000,000 CFU/mL or more". */
export function sayRead(field: ReadField, value: ReadValue, reader: Reader): string {
  const [words, unit] = fieldWords[field]
  const figure = (one: number) => sayFigure(field, one, reader)
  if (typeof value === 'number') return `${words} ${figure(value)}`
  if ('low' in value) {
    const low = figure(value.low)
    const from = unit === '' || !low.includes(' ') ? low : low.slice(0, low.lastIndexOf(' '))
    return `${words} ${from}–${figure(value.high)}`
  }
  return 'below' in value ? `${words} under ${figure(value.below)}` : `${words} ${figure(value.atLeast)} or more`
}

function sayFigure(field: ReadField, value: number, reader: Reader): string {
  if (field === 'volume') return sayVolume(value, reader)
  const [, unit, decimals] = fieldWords[field]
  return `${sayNumber(value, decimals, reader)} ${unit}`.trim()
}

function notesOf({ causes, stops, unjudged, leftOut }: Diagnosis, notUnderstood: readonly string[]): string[] {
  const notes: string[] = []
  if (stops.some(({ keepAway }) => keepAway))
    notes.push('No test at the sump before what stands under “at once” is dealt with.')
  if (causes.length === 0)
    notes.push('Nothing of what was given speaks for a fault; that does not show that there is none.')
  else
    notes.push(
      'Several causes can be at work at once. Take the order, not the digits: nobody has counted how often each shows what.',
    )
  if (unjudged.length > 0) {
    notes.push(
      `Not judged, since there is no limit or factor to hold it against: ${sayList(unjudged.map((field) => fieldWords[field][0]))}.`,
    )
  }
  if (notUnderstood.length > 0)
    notes.push(`Not understood, and left aside: ${sayList(notUnderstood.map((word) => `“${word}”`))}.`)
  if (leftOut.length > 0)
    notes.push(`Too much at once to weigh; left out, as telling least: ${sayList(leftOut.map(sayFinding))}.`)
  return notes
}
