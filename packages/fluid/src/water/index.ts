export {
  type BlendQuestion,
  type BlendWater,
  blendWaters,
  type ConflictingLimit,
  type Mineral,
  type MineralLimits,
  makeUpLimits,
  minerals,
  type SumpLimits,
  type WaterBlend,
} from './blend.ts'
export {
  type BuildUp,
  type BuildUpMineral,
  type BuildUpQuestion,
  buildUp,
  buildUpMinerals,
  type LimitDays,
  type Minerals,
  type TopUpWater,
} from './build-up.ts'
export { type ConductivityReading, conductivityAt25 } from './conductivity.ts'
export { type Evaporation, evaporationFrom, type OpenSurface } from './evaporation.ts'
export { humidityRatio, latentHeat, saturationPressure } from './moist-air.ts'
export { carryOffFromCycles, cyclesFromTracer, type TracerPair } from './tracers.ts'
export {
  type FeedWater,
  type MembraneUnit,
  type Polisher,
  type Treatment,
  type TreatmentQuestion,
  treatment,
} from './treatment.ts'
