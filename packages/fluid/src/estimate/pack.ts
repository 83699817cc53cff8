import { newBelief } from '../filter/index.ts'
import { noVisits } from './doubts/visits.ts'
import type { WorkCalendar } from './events.ts'
import { publishedPriors, type ShopPriors } from './priors.ts'
import { type Branch, copyBranch, emptyTally, type ShopEstimate, type SumpState } from './shop-estimate.ts'
import { size } from './state.ts'

/** The estimate of a shop before its first record. */
export function openShopEstimate(calendar: WorkCalendar, priors: ShopPriors = publishedPriors): ShopEstimate {
  return { calendar, priors, sumps: new Map(), tally: emptyTally(), visits: noVisits(), firstDay: null }
}

/** A copy that may be carried on without changing the first. */
export function copyShopEstimate(shop: ShopEstimate): ShopEstimate {
  const sumps = [...shop.sumps].map(([id, sump]) => [id, copySump(sump)] as const)
  return { ...shop, tally: copied(shop.tally), visits: copied(shop.visits), sumps: new Map(sumps) }
}

/** Doubts, specs and idle times are never changed, only replaced: they may be shared. */
function copySump(sump: SumpState): SumpState {
  return {
    ...sump,
    branches: sump.branches.map(copyBranch),
    surprises: sump.surprises.map((surprise) => ({ ...surprise })),
    doubts: [...sump.doubts],
    idles: [...sump.idles],
    visits: copied(sump.visits),
  }
}

/** Plain objects and lists anew; beliefs are handled by themselves. */
function copied<T>(value: T): T {
  if (Array.isArray(value)) return value.map(copied) as T
  if (value === null || typeof value !== 'object' || ArrayBuffer.isView(value)) return value
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, copied(one)])) as T
}

/** An estimate as plain JSON; figures come back bit for bit. */
export interface PackedShop {
  calendar: WorkCalendar
  priors: ShopPriors
  tally: ShopEstimate['tally']
  visits: ShopEstimate['visits']
  firstDay: number | null
  sumps: [id: string, sump: PackedSump][]
}

type PackedBranch = Omit<Branch, 'belief'> & { mean: number[]; upper: number[] }
type PackedSump = Omit<SumpState, 'branches'> & { branches: PackedBranch[] }

export function packShopEstimate({ calendar, priors, tally, visits, firstDay, sumps }: ShopEstimate): PackedShop {
  return {
    calendar,
    priors,
    tally,
    visits,
    firstDay,
    sumps: [...sumps].map(([id, sump]) => [id, { ...sump, branches: sump.branches.map(packBranch) }]),
  }
}

function packBranch({ belief: { mean, cov }, ...rest }: Branch): PackedBranch {
  const upper: number[] = []
  for (let i = 0; i < size; i++) for (let j = i; j < size; j++) upper.push(cov[i * size + j]!)
  return { ...rest, mean: [...mean], upper }
}

export function unpackShopEstimate({ sumps, ...shop }: PackedShop): ShopEstimate {
  return {
    ...copied(shop),
    sumps: new Map(sumps.map(([id, sump]) => [id, { ...copied(sump), branches: sump.branches.map(unpackBranch) }])),
  }
}

function unpackBranch({ mean, upper, ...rest }: PackedBranch): Branch {
  const belief = newBelief(size)
  belief.mean.set(mean)
  let at = 0
  for (let i = 0; i < size; i++) {
    for (let j = i; j < size; j++) {
      belief.cov[i * size + j] = upper[at]!
      belief.cov[j * size + i] = upper[at]!
      at++
    }
  }
  return { ...copied(rest), belief }
}
