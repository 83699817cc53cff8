export { type ComparedEdition, type ComparedTopic, comparedPacks } from './differences.ts'
export { type GermClass, germClass } from './germ-class.ts'
export { type CalmInterval, type CalmRule, type DatedResult, nitriteInterval } from './nitrite-interval.ts'
export {
  type CalendarTest,
  calendarTests,
  type GermClasses,
  type GuidanceEdition,
  type GuidancePack,
  type GuidanceRule,
  type GuidanceSource,
  type GuidedTest,
  guidedTests,
  type RuleSays,
  type RuleTopic,
  sayEdition,
  sayTopic,
  topicOf,
} from './pack.ts'
export { type ChosenEdition, chosenEdition, guidancePacks, ownPack } from './packs/index.ts'
export { type PhQuestion, type PhVerdict, phVerdict } from './ph-verdict.ts'
export { isUnder, mayBeOver, rangeOf, type ValueRange } from './reported-range.ts'
export {
  type LimitEnd,
  type LimitedQuantity,
  type LimitLevel,
  limitLevels,
  type OfferedLimit,
  type SettledLimit,
  settledLimits,
} from './settled-limits.ts'
export {
  type SampleMethod,
  type SampleState,
  type SampleWindow,
  type SlideRead,
  type SlideTiming,
  sampleMethodOf,
  sampleState,
  sampleWindows,
  slideRead,
} from './slide-read.ts'
export { type TestDayQuestion, testDay } from './test-day.ts'
export { type TestInterval, testInterval } from './test-interval.ts'
