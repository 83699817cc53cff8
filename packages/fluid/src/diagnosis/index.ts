export { causes } from './causes/index.ts'
export { type CauseReason, type Diagnosis, diagnose, type RankedCause } from './diagnose.ts'
export { type Evidence, evidenceOf, type Symptoms } from './evidence.ts'
export { causeName, sayFinding } from './finding-words.ts'
export type { Cause } from './network.ts'
export { type Found, infer, mostPresent, type NoisyOr, type Posterior } from './noisy-or.ts'
export {
  type Limits as SymptomLimits,
  type ReadField,
  type Readings as SymptomReadings,
  type ReadLimits,
  type ReadValue,
  readFields,
} from './readings.ts'
export { type Remedy, sayRemedy } from './remedy.ts'
export {
  readSigns,
  roundSigns,
  type Sign,
  type SignFamily,
  type SignId,
  signCalled,
  signFamilies,
  signs,
} from './signs.ts'
export { needsFollowUp, type Stop, sayStop, stopsFor } from './stops.ts'
