export { type CalendarReader, sayByDate, sayCalendarDay, sayOnDate } from './calendar-days.ts'
export { sayChance } from './chance.ts'
export {
  type SheetContext,
  type StepWords,
  sayChangeOver,
  sayCleanout,
  sayCleanoutStep,
  sayHours,
  sayRinseFaults,
} from './cleanout-sheet.ts'
export {
  costPartNames,
  type SaidGap,
  type SaidLife,
  type SaidLitres,
  type SaidPart,
  sayCost,
  sayGap,
  sayLean,
  sayLife,
  sayMonth,
  sayRich,
  saySaving,
} from './cost.ts'
export { type DayReader, dayAhead, sayDayAhead, sayOnDay, sayUntilDay } from './days.ts'
export {
  type SaidCause,
  type SaidDiagnosis,
  sayBecause,
  sayDiagnosis,
  sayEvidence,
  sayRead,
} from './diagnosis.ts'
export {
  type AdditiveKind,
  type DoseContext,
  type DoseWords,
  sayDose,
  sayDoseAmount,
  sayDoseFault,
  sayOverLabel,
} from './dose.ts'
export { sayDoubt, sayStory } from './doubt.ts'
export {
  sayAction,
  sayCalm,
  sayCourse,
  sayDate,
  sayEvery,
  sayGerms,
  sayInterval,
  sayLevel,
  sayLimit,
  sayNitriteOver,
  sayPassage,
  sayPh,
  sayRefused,
  sayReported,
  sayRule,
  saySlide,
  saySource,
  sayTest,
  sayTestsDue,
  upperFirst,
} from './guidance.ts'
export { type HandoverParts, sayHandoverNote, sayReadBy } from './handover.ts'
export { type SaidJob, sayJob } from './job.ts'
export { sayLearnt } from './learnt.ts'
export { type MoneyReader, sayCents, sayMoney, sayMoneyBetween, sayWholeMoney } from './money.ts'
export { sayParallel } from './parallel.ts'
export { lowerFirst, sayChoice, sayCount, sayList } from './phrases.ts'
export {
  byMistake,
  likelyReasons,
  notLetIn,
  notPouredReasons,
  putOffReasons,
  reasonWith,
  recordedReason,
  sayReason,
  takenUpAgain,
} from './reasons.ts'
export { type RecipeContext, type RecipeWords, sayAlternative, sayReasons, sayRecipe, sayWay } from './recipe.ts'
export { saySheet } from './sheet-titles.ts'
export { sayShutdownStep } from './shutdown.ts'
export {
  type CheckReason,
  type DatedCrossing,
  type StandingFigures,
  sayAbout,
  sayCrossing,
  sayDrift,
  sayHardness,
  sayNextCheck,
  sayStanding,
} from './standing.ts'
export {
  type StockReader,
  type StockWords,
  sayCountFound,
  sayDemand,
  sayNotKept,
  sayOnFloor,
  sayOrderSize,
  sayPacks,
  sayPlannedUse,
  sayRunsOut,
  sayStock,
  sayStockDoubts,
  sayUnmeasured,
} from './stock.ts'
export { sayLater, sayPutOff, sayRound } from './today-list.ts'
export { sayUnit } from './unit-word.ts'
export {
  type Reader,
  sayBetween,
  sayConcentration,
  sayNumber,
  sayParts,
  sayPercent,
  sayStrength,
  sayVolume,
} from './units.ts'
export { type SaidUpkeep, sayUpkeep } from './upkeep.ts'
export { sayBeyond, sayReconciled, sayTerm, sayWaste, sayWasteUnmeasured, type WasteWords } from './waste.ts'
export { type PlannedDay, sayOtherWater, sayPlannedDay } from './what-if.ts'
