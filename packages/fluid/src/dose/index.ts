export {
  type DoseAnswer,
  type DoseLabel,
  type DoseQuestion,
  dose,
  type GivenDose,
  type OverLabel,
  overLabel,
} from './dose.ts'
export { type DoseUnit, type LabelUnit, type PerLitre, perLitre } from './per-litre.ts'
