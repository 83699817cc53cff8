export { crossingHorizon, crossingOf, type WatchedLimits } from './ahead/crossing.ts'
export { doubtsOf, estimateOf, estimateSump, mixAfter, mixNow } from './ahead/estimate-sump.ts'
export { type ExpectedReading, expectedReading } from './ahead/expected-reading.ts'
export { commonStrength, type HeldSump, holdingStrength } from './ahead/holding-strength.ts'
export { checkedFrom, nextCheck } from './ahead/next-check.ts'
export { type TopUpPlan, toppedUp } from './ahead/topped-up.ts'
export { type Untouched, untouched } from './ahead/untouched.ts'
export type {
  Crossing,
  DoubtKind,
  EstimatedDoubt,
  FiguresAhead,
  SumpEstimate,
} from './answer-types.ts'
export type {
  PouredWater,
  Reported,
  ShopEvent,
  ShopTime,
  SumpSpec,
  WorkCalendar,
} from './events.ts'
export type { ToldSump } from './history/follow-sump.ts'
export { hadItBeen, type OtherWater } from './history/had-it-been.ts'
export { type PastDay, smoothSump } from './history/smooth-sump.ts'
export { isAdoptionDay, learnPriors } from './learn-priors.ts'
export { copyShopEstimate, openShopEstimate, type PackedShop, packShopEstimate, unpackShopEstimate } from './pack.ts'
export { publishedPriors, type ShopPriors } from './priors.ts'
export type { ShopEstimate } from './shop-estimate.ts'
export { takeDay } from './take-day.ts'
