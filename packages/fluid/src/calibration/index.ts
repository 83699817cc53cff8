export { type Agreement, differencesOf, type MethodPair, methodAgreement } from './agreement.ts'
export { chartFromMixes } from './chart.ts'
export { type Curvature, curvatureOf } from './curvature.ts'
export {
  type DialCheck,
  type DialCurve,
  type DialDrift,
  type DialSetting,
  type DialStrength,
  dialCurve,
  dialDrift,
  dialFor,
  strengthAtDial,
} from './dial.ts'
export { type FactorOptions, type KnownMix, type ProductFactor, productFactor } from './factor.ts'
export { type InverseAnswer, type InverseQuestion, inversePrediction } from './inverse.ts'
export { type CalibrationPoint, fitLine, type LineOptions, type StraightLine } from './line.ts'
export { type Titration, titratedConcentration } from './titration.ts'
