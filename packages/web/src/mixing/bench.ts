import {
  brimTolerance,
  concentrationFromBrix,
  type Figure,
  message,
  quantile95,
  type RecipeBench,
  type SumpToPour,
  say,
  sayNumber,
  sayVolume,
} from '@sumpbook/fluid'
import type { SumpNow, Units } from '../api/types.ts'
import { type FieldRead, readLitres, readPercent, readStrength } from '../fields/read.ts'
import { type FieldFaults, type FieldReaders, type FieldTexts, readTexts } from '../fields/read-texts.ts'
import { fieldPercent, fieldVolume, readerOf } from '../say/units.ts'

/** The figures of a recipe bench. */
export type BenchKey =
  | 'volume'
  | 'concentration'
  | 'fillVolume'
  | 'target'
  | 'low'
  | 'high'
  | 'strongest'
  | 'leanest'
  | 'capacity'
  | 'minVolume'
  | 'volumeGive'
  | 'concentrationGive'

type BenchFigures = Readonly<Record<BenchKey, number | null>>
export type BenchTexts = FieldTexts<BenchKey>

const volumes: readonly BenchKey[] = ['volume', 'fillVolume', 'capacity', 'minVolume', 'volumeGive']

/** What the book knows of a sump, as figures of the bench. */
function figuresOf({
  volume,
  concentration,
  bench,
}: Pick<SumpNow, 'volume' | 'concentration' | 'bench'>): BenchFigures {
  const give = (figure: Figure | null) => (figure === null ? null : quantile95 * figure.sd)
  return {
    volume: volume?.mean ?? null,
    concentration: concentration?.mean ?? null,
    fillVolume: bench.fillVolume,
    target: bench.target,
    low: bench.band?.low ?? null,
    high: bench.band?.high ?? null,
    strongest: bench.maxStrength,
    leanest: bench.minStrength,
    capacity: bench.capacity,
    minVolume: bench.minVolume,
    volumeGive: give(volume),
    concentrationGive: give(concentration),
  }
}

const textOf = (key: BenchKey, value: number | null, units: Units): string =>
  value === null ? '' : volumes.includes(key) ? fieldVolume(value, units) : fieldPercent(value)

export const emptyBench: BenchTexts = Object.fromEntries(
  [
    'volume',
    'concentration',
    'fillVolume',
    'target',
    'low',
    'high',
    'strongest',
    'leanest',
    'capacity',
    'minVolume',
    'volumeGive',
    'concentrationGive',
  ].map((key) => [key, '']),
) as BenchTexts

/** A sump as texts in the shop's units. */
export function benchTexts(sump: Pick<SumpNow, 'volume' | 'concentration' | 'bench'>, units: Units): BenchTexts {
  const figures = figuresOf(sump)
  return Object.fromEntries(
    (Object.keys(figures) as BenchKey[]).map((key) => [key, textOf(key, figures[key], units)]),
  ) as BenchTexts
}

export interface BenchRead {
  faults: FieldFaults<BenchKey>
  /** What a recipe cannot do without and is not there, in words. */
  missing: string[]
  standing: { volume: Figure | null; concentration: Figure | null }
  figures: BenchFigures
}

/** The figures typed on the bench; those that still stand as the book has them keep all their digits. */
export function readBench(
  texts: BenchTexts,
  units: Units,
  sump: Pick<SumpNow, 'volume' | 'concentration' | 'bench'> | null,
): BenchRead {
  const known = sump === null ? {} : knownTexts(figuresOf(sump), units)
  const { values, faults } = readTexts(texts, readersOf(units), known)
  for (const [key, fault] of crossFaults(values, units)) faults[key] ??= fault
  const standing = {
    volume: figureOf(values.volume, values.volumeGive),
    concentration: figureOf(values.concentration, values.concentrationGive),
  }
  return { faults, missing: missingFrom(values), standing, figures: values }
}

function knownTexts(figures: BenchFigures, units: Units) {
  const keys = Object.keys(figures) as BenchKey[]
  return Object.fromEntries(
    keys.map((key) => [key, { text: textOf(key, figures[key], units), value: figures[key] }]),
  ) as Record<BenchKey, { text: string; value: number | null }>
}

function readersOf(units: Units): FieldReaders<BenchKey> {
  const litres = (text: string): FieldRead => readLitres(text, units)
  const above0 = (text: string): FieldRead => readLitres(text, units, { above: 0 })
  const percent = (text: string): FieldRead => readPercent(text)
  const strength = (text: string): FieldRead => readStrength(text)
  return {
    volume: litres,
    concentration: percent,
    fillVolume: above0,
    target: percent,
    low: percent,
    high: percent,
    strongest: strength,
    leanest: strength,
    capacity: above0,
    minVolume: litres,
    volumeGive: litres,
    concentrationGive: percent,
  }
}

/** A figure with what it may be off either way; without that it is taken as exact. */
function figureOf(mean: number | null, give: number | null): Figure | null {
  if (mean === null) return null
  const off = give ?? 0
  return { mean, sd: off / quantile95, low90: Math.max(0, mean - off), high90: mean + off }
}

function missingFrom({ concentration, fillVolume, target }: BenchFigures): string[] {
  return [
    concentration === null ? say('the strength now') : '',
    fillVolume === null ? say('the full mark') : '',
    target === null ? say('the target') : '',
  ].filter((words) => words !== '')
}

/** What two figures cannot both be. */
function crossFaults(values: BenchFigures, units: Units): [BenchKey, { found: string; expected: string }][] {
  const brim = values.capacity ?? (values.fillVolume === null ? null : 1.25 * values.fillVolume)
  const pairs: [BenchKey, number | null, string][] = [
    ['low', values.high, message('at most the upper end of the band, {most}')],
    ['low', values.target, message('at most the target, {most}')],
    ['target', values.high, message('at most the upper end of the band, {most}')],
    ['target', values.strongest ?? usualStrongest, message('at most the strongest mix poured, {most}')],
    ['leanest', values.target, message('at most the target, {most}')],
    ['fillVolume', values.capacity, message('at most the brim, {most}')],
    ['minVolume', values.fillVolume, message('at most the full mark, {most}')],
    ['volume', brim === null ? null : brimTolerance * brim, message('at most a little above the brim, {most}')],
  ]
  return pairs.flatMap(([key, most, words]): [BenchKey, { found: string; expected: string }][] => {
    const value = values[key]
    if (value === null || most === null || value <= most * (1 + 1e-12)) return []
    const written = (amount: number) =>
      volumes.includes(key) ? sayVolume(amount, readerOf(units)) : `${sayNumber(amount, 2, {}, 0)} %`
    return [[key, { found: written(value), expected: say(words, { most: written(most) }) }]]
  })
}

/** Where nothing is said, as the book takes it. */
export const usualStrongest = 20

/** What a recipe needs, of the figures typed; waters and buckets are the shop's. */
export function recipeBench(
  { figures }: BenchRead,
  shop: Pick<RecipeBench, 'waters' | 'container' | 'measure' | 'class'>,
): RecipeBench {
  const { fillVolume, target, low, high, strongest, leanest, capacity, minVolume } = figures
  return {
    brixFactor: null,
    brixChart: null,
    resolution: 0.2,
    holdUp: 0,
    dipTable: null,
    fillVolume,
    capacity,
    minVolume,
    target,
    band: low === null && high === null ? null : { low: low ?? 0, high: high ?? 100 },
    maxStrength: strongest ?? usualStrongest,
    minStrength: leanest ?? 0,
    ...shop,
  }
}

/** The same for the search of ways; null where a figure is missing that it cannot do without. */
export function sumpToPour({ standing, figures }: BenchRead, bench: RecipeBench): SumpToPour | null {
  const { volume, concentration } = standing
  const { fillVolume, target, capacity, minVolume } = figures
  if (volume === null || concentration === null || fillVolume === null || target === null) return null
  return {
    volume: volume.mean,
    volumeSd: volume.sd,
    concentration: concentration.mean,
    concentrationSd: concentration.sd,
    fillVolume,
    target,
    ...(capacity === null ? {} : { capacity }),
    ...(minVolume === null ? {} : { minVolume }),
    ...(bench.band === null ? {} : { band: bench.band }),
    ...(bench.class == null ? {} : { class: bench.class }),
  }
}

/** A reading of the refractometer as strength and what it may be off, both as texts; null where the scale does not reach. */
export function strengthTexts(
  brix: number,
  { brixFactor, brixChart, resolution }: Pick<RecipeBench, 'brixFactor' | 'brixChart' | 'resolution'>,
): { concentration: string; concentrationGive: string } | null {
  const scale = brixChart !== null ? { chart: brixChart } : brixFactor !== null ? { factor: brixFactor } : null
  if (scale === null) return null
  const read = concentrationFromBrix({ brix, resolution, ...scale })
  if (read.outcome === 'off-chart' || read.concentration > 100) return null
  return {
    concentration: fieldPercent(read.concentration),
    concentrationGive: fieldPercent(quantile95 * read.sd),
  }
}
