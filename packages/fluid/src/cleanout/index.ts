export {
  type LaterSlide,
  laterSlideDays,
  type RinseFault,
  type RinseSigns,
  type RinseVerdict,
  rinseVerdict,
  type SlideVerdict,
  slideVerdict,
} from './acceptance.ts'
export { type ApartBecause, type ChangeOver, changeOver, type FluidTold } from './change-over.ts'
export {
  type CleanoutAsked,
  type CleanoutFill,
  type CleanoutPour,
  type CleanoutQuantities,
  type Contents,
  cleanoutQuantities,
} from './cleanout.ts'
export { type CleanoutPrices, cleanoutCost } from './cost.ts'
export { type DrainWay, drainWay, type ToDrain } from './drain-way.ts'
export { type FirstFill, type FirstWater, type FirstWaterChoice, firstWater } from './first-water.ts'
export { isKeepersStep } from './keepers-steps.ts'
export {
  type ParallelAsked,
  type ParallelJob,
  type ParallelPlan,
  parallelPlan,
  type Span,
  type Stretch,
} from './parallel.ts'
export {
  type CleanoutSheet,
  type CleanoutStage,
  type CleanoutStep,
  cleanoutSheet,
  type SheetAsked,
  type SheetFigure,
} from './sheet.ts'
export { type ShutdownKind, type ShutdownStep, shutdownSheet } from './shutdown.ts'
export { sharedThings, stretchesOf } from './stretches.ts'
