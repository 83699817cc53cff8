import {
  copyShopEstimate,
  isAdoptionDay,
  learnPriors,
  openShopEstimate,
  packShopEstimate,
  type ShopEstimate,
  type ShopEvent,
  type ShopPriors,
  takeDay,
  unpackShopEstimate,
  type WorkCalendar,
} from '@sumpbook/fluid'

/** What folds a shop's days into where it stands; `S` is the state, `P` what it can learn. */
export interface Estimator<S, P> {
  open(calendar: WorkCalendar, priors?: P): S
  /** Takes all events of one day; days come in rising order. */
  takeDay(shop: S, day: number, events: readonly ShopEvent[]): void
  copy(shop: S): S
  /** As JSON, to the last bit. */
  pack(shop: S): unknown
  unpack(packed: unknown): S
  learn(shop: S): P
  /** Whether what was learnt up to the day before is adopted on this day. */
  isAdoptionDay(firstDay: number, day: number): boolean
}

/** The estimator of the book. */
export const shopEstimator: Estimator<ShopEstimate, ShopPriors> = {
  open: openShopEstimate,
  takeDay,
  copy: copyShopEstimate,
  pack: packShopEstimate,
  unpack: (packed) => unpackShopEstimate(packed as Parameters<typeof unpackShopEstimate>[0]),
  learn: learnPriors,
  isAdoptionDay,
}
