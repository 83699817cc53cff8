export {
  type DoseAnswer,
  type DoseLabel,
  type DoseQuestion,
  dose,
  type GivenDose,
  type OverLabel,
  overLabel,
} from './dose.ts'
export { doseFault, type MeasuredIn, measuredUnit } from './measured-amount.ts'
export { type DoseUnit, type LabelUnit, type PerLitre, perLitre } from './per-litre.ts'
