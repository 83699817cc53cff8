import { estimateSump, hadItBeen, holdingStrength, toppedUp } from '@sumpbook/fluid'
import { BookError } from '../errors.ts'
import { benchFor } from './estimate-document.ts'
import type { OutlookParts } from './outlook.ts'
import { dayNumber } from './shop-clock.ts'
import type { ShopStanding } from './shop-standing.ts'
import { toldOfSump } from './told-of-sump.ts'
import { waterPoured } from './water-poured.ts'

/** How a sump might be kept from now on; what is missing is as it is now. */
export interface PlanQuestion {
  at: Date
  /** Id of the water; the first of the book without it. */
  water?: string
  /** Percent of what is poured; without it, what holds the target. */
  strength?: number
  /** Days between fills; 7 without it. */
  every?: number
  /** Days ahead. */
  days?: readonly number[]
}

const usualDays = [7, 28, 91, 182]
const usualEvery = 7
/** Without a target and a guess: what is poured into most machines (common practice, no source). */
const usualStrength = 5

/**
 * Where a sump goes if it is filled to its mark again and again with one water and one strength.
 *
 * @throws {BookError} `not-found` a sump or a water the book does not have
 */
export async function readPlan(
  { checkpoints }: OutlookParts,
  id: string,
  { at, water, strength, every = usualEvery, days = usualDays }: PlanQuestion,
) {
  const { standing, sumps } = await checkpoints.standing(at.getTime(), id)
  const { shop, clock, ms } = standing
  const now = clock.at(ms)
  const chosen = waterOf(standing, water)
  const { target } = benchFor(standing, sumps[0]!)
  const { evaporation, carryOff } = estimateSump(shop, id, now, []).now
  const holds =
    target === null || !(carryOff.mean > 0)
      ? null
      : holdingStrength({ target, evaporation: evaporation.mean, carryOff: carryOff.mean })
  const poured = strength ?? holds ?? usualStrength
  const ahead = toppedUp(shop, id, now, { strength: poured, water: chosen.poured, every }, days)
  return { sump: id, at: at.toISOString(), water: chosen.id, strength: poured, every, ahead }
}

/** Since when another water might have been used. */
export interface OtherWaterQuestion {
  at: Date
  water: string
  /** A calendar day of the shop, `2026-01-01`. */
  since: string
}

/**
 * What another water would have made of a sump's minerals by now.
 *
 * @throws {BookError} `not-found` a sump or a water the book does not have
 */
export async function readOtherWater(
  { journal, checkpoints, things }: OutlookParts,
  id: string,
  { at, water, since }: OtherWaterQuestion,
) {
  const { standing } = await checkpoints.standing(at.getTime(), id)
  const { shop, clock, ms } = standing
  const events = await toldOfSump(journal, id, { history: await things(), clock, ms })
  const { doubts } = estimateSump(shop, id, clock.at(ms), [])
  const chosen = waterOf(standing, water)
  const found = hadItBeen(
    shop,
    { sump: id, events, doubts },
    { water: chosen.poured, since: dayNumber(since), at: clock.at(ms) },
  )
  return { sump: id, at: at.toISOString(), water: chosen.id, since, minerals: found }
}

function waterOf({ things, memory }: ShopStanding, water: string | undefined) {
  const id = water ?? [...things.water.keys()][0]
  if (id === undefined || !things.water.has(id)) {
    throw new BookError('not-found', `This book has no water "${water ?? ''}".`)
  }
  return { id, poured: waterPoured(id, things, memory) }
}
