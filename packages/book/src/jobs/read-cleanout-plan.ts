import {
  type CleanoutPrices,
  cleanoutCost,
  type FirstWaterChoice,
  firstWater,
  lowerFirst,
  type Reader,
  say,
  sayChangeOver,
  sayCleanout,
  sayNumber,
  saySheet,
  sayVolume,
  unitsHere,
} from '@sumpbook/fluid'
import type { BookParts, TodayReader } from '../book-parts.ts'
import { refusal } from '../errors.ts'
import type { ShopStanding } from '../estimate/shop-standing.ts'
import type { Sump } from '../schema/things/index.ts'
import type { Things } from '../setup/things.ts'
import { benchOf } from '../today/bench.ts'
import { lastReadings } from '../today/last-readings.ts'
import type { CleanoutPlan, SheetKind } from './job-types.ts'
import { type MadeSheet, makeSheet } from './make-sheet.ts'
import type { CleanoutValues } from './sheet-values.ts'

/** What is asked of a plan; what is missing is taken from the book, or as the trade does it. */
export interface CleanoutQuestion {
  at: Date
  reader?: TodayReader
  volume?: number
  heldBack?: number
  cleanerPercent?: number
  hours?: number
  rinsePercent?: number
  rinseFraction?: number
  rinses?: number
  target?: number
  water?: string
  /** Another fluid that comes in. */
  fluid?: string
  cleaner?: string
  solids?: 'little' | 'much'
  foul?: boolean
  /** The day it is planned for. */
  on?: string
}

/** What the trade takes where nobody says (common practice, no source). */
const usual = { heldBackShare: 0.1, cleanerPercent: 2, hours: 4, rinsePercent: 2, rinseFraction: 0.4, rinses: 1 }

/**
 * The plan of a cleanout from what the book knows of the sump.
 *
 * @throws {BookError} `not-found` a sump, `refused-input` what the book does not know and nobody gave
 */
export async function readCleanoutPlan(
  { journal, checkpoints, things: readThings }: BookParts,
  id: string,
  question: CleanoutQuestion,
): Promise<CleanoutPlan> {
  const { standing, sumps } = await checkpoints.standing(question.at.getTime(), id)
  const sump = sumps[0]!
  const at = question.at.toISOString()
  const read = await lastReadings(journal, await readThings(), { sumps, until: at })
  const reader: Reader = { units: unitsHere(standing.things.shop), ...question.reader }
  const heldBefore = read.get(id)?.charge?.heldBack ?? null
  return planOf(sump, { standing, heldBefore, reader, at }, question)
}

interface Known {
  standing: ShopStanding
  /** Litres that stayed at the last change; null where nobody wrote it. */
  heldBefore: number | null
  reader: Reader
  at: string
}

function planOf(sump: Sump, { standing, heldBefore, reader, at }: Known, asked: CleanoutQuestion): CleanoutPlan {
  const { things, memory } = standing
  const now = memory.sumps.get(sump.id)?.charge?.fluid ?? sump.fluid
  const fluid = asked.fluid ?? now
  if (!things.fluid.has(fluid)) {
    throw refusal(
      [{ pointer: '/fluid', found: JSON.stringify(fluid), expected: 'the id of a fluid of this book' }],
      'plan',
    )
  }
  const isChange = fluid !== now
  const bench = benchOf({ ...sump, fluid }, { fluid, lot: null }, things, at)
  const notes: string[] = []
  const volume = known('volume', asked.volume ?? sump.fillVolume, 'litres at the full mark')
  const target = known('target', asked.target ?? bench.target ?? undefined, 'percent in the fresh charge')
  const heldBack = asked.heldBack ?? heldBefore ?? usual.heldBackShare * volume
  if (asked.heldBack === undefined) {
    const figures = { volume: sayVolume(heldBack, reader) }
    notes.push(
      heldBefore === null
        ? say(
            'What stays at each drain is taken as a tenth, common practice: 5 to 15 % stay in lines and corners: {volume}.',
            figures,
          )
        : say('What stays at each drain is taken as at the last change: {volume}.', figures),
    )
  }
  const choice = waterFor(things, { ...sump, fluid }, target)
  const water = asked.water ?? ('water' in choice ? choice.water : undefined)
  if (asked.water === undefined) notes.push(...sayWater(choice, things))
  const values: CleanoutValues = {
    volume,
    heldBack,
    target,
    cleanerPercent: asked.cleanerPercent ?? usual.cleanerPercent,
    hours: asked.hours ?? usual.hours,
    rinsePercent: asked.rinsePercent ?? usual.rinsePercent,
    rinseFraction: asked.rinseFraction ?? usual.rinseFraction,
    rinses: asked.rinses ?? usual.rinses,
    strongest: bench.maxStrength,
    fluid,
    ...(isChange ? { fromFluid: now } : {}),
    ...(water === undefined ? {} : { water }),
    ...(asked.cleaner === undefined ? {} : { cleaner: asked.cleaner }),
    ...(asked.solids === undefined ? {} : { solids: asked.solids }),
    ...(asked.foul === undefined ? {} : { foul: asked.foul }),
    ...(asked.on === undefined ? {} : { on: asked.on }),
  }
  const sheet: SheetKind = isChange ? 'change-over' : 'cleanout'
  const made = madeOf(makeSheet(sheet, values, { things, at, reader, sump }), values)
  const { cleanout, change, steps } = made
  const prices = pricesOf(things, fluid, water)
  if (sump.metals === undefined)
    notes.push(say('What metals are cut is not in the book: aluminium and magnesium are taken as possible.'))
  notes.push(say('Order and times of the steps are common practice; accepted on pH, look, smell and a later slide.'))
  return {
    sump: sump.id,
    name: sump.name,
    title: saySheet(sheet, sump.name),
    sheet,
    sentence: sayCleanout(cleanout, reader),
    steps,
    waste: cleanout.quantities.waste,
    downtimeHours: cleanout.downtimeHours,
    labourHours: cleanout.labourHours,
    cost: Object.keys(prices).length === 0 ? null : Math.round(100 * cleanoutCost(cleanout, prices)) / 100,
    currency: things.shop.currency,
    change: change === null ? [] : sayChangeOver(change),
    notes,
    opening: { kind: 'signoff', sump: sump.id, step: 'opened', sheet, values },
  }
}

function known(field: string, value: number | undefined, expected: string): number {
  if (value !== undefined) return value
  throw refusal(
    [{ pointer: `/${field}`, found: 'nothing', expected: `${expected}: the book does not know it` }],
    'plan',
  )
}

function madeOf(made: MadeSheet | null, { volume, heldBack, target }: CleanoutValues) {
  if (made !== null && made.cleanout !== null) return { ...made, cleanout: made.cleanout }
  const fault =
    heldBack >= volume
      ? { pointer: '/heldBack', found: String(heldBack), expected: `less than the ${volume} litres of the sump` }
      : { pointer: '/target', found: String(target), expected: 'what can be mixed with the rinse in the corners' }
  throw refusal([fault], 'plan')
}

function waterFor(things: Things, sump: Sump, target: number): FirstWaterChoice {
  const hardness = sump.limits?.hardness ?? things.fluid.get(sump.fluid)?.limits?.hardness
  const waters = [...things.water.values()].map(({ id, kind = null, hardness = null }) => ({ id, kind, hardness }))
  return firstWater(waters, {
    low: hardness?.low ?? null,
    high: hardness?.high ?? null,
    strength: Math.min(target, 99),
  })
}

function sayWater(choice: FirstWaterChoice, { water }: Things): string[] {
  const name = (id: string) => lowerFirst(water.get(id)?.name ?? id)
  const wants = say('A fresh charge wants some minerals: very soft water foams.')
  switch (choice.outcome) {
    case 'fits':
      return [
        say('The fresh charge is made with {water}: {hardness} mg/L in the mix, inside its limits.', {
          water: name(choice.water),
          hardness: sayNumber(choice.hardness, 0),
        }),
      ]
    case 'blend':
      return [
        say(
          'The fresh charge wants {percent} % {water} and the rest {other}: together {hardness} mg/L in the mix, its lower limit.',
          {
            percent: sayNumber(100 * choice.share, 0),
            water: name(choice.water),
            other: name(choice.with),
            hardness: sayNumber(choice.hardness, 0),
          },
        ),
      ]
    case 'by-kind':
      return choice.limited
        ? [
            say(
              'No water of the shop comes inside the limits of hardness; {water} is nearest to what the trade takes. {wants}',
              { water: name(choice.water), wants },
            ),
          ]
        : [
            say('The fresh charge is made with {water}, as the trade does: no limits of hardness are set. {wants}', {
              water: name(choice.water),
              wants,
            }),
          ]
    case 'none':
      return [wants]
  }
}

function pricesOf(
  { shop: { costs = {} }, fluid, water }: Things,
  fluidId: string,
  waterId: string | undefined,
): CleanoutPrices {
  const prices = {
    concentrate: fluid.get(fluidId)?.pricePerLitre,
    cleaner: costs.cleanerPerLitre,
    water: waterId === undefined ? undefined : water.get(waterId)?.costPerLitre,
    waste: costs.wastePerLitre,
    labour: costs.labourPerHour,
    downtime: costs.machinePerHour,
  }
  return Object.fromEntries(Object.entries(prices).filter(([, price]) => price !== undefined))
}
