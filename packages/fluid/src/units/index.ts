export {
  type HardnessMetals,
  type HardnessUnit,
  hardnessFrom,
  hardnessFromMetals,
  hardnessInAll,
  hardnessTo,
  hardnessUnits,
} from './hardness.ts'
export { type LengthUnit, lengthUnits, millimetresFrom, millimetresTo } from './length.ts'
export { nitrateFromNitrogen, nitriteFromNitrogen } from './nitrogen.ts'
export { type NumberRead, type NumberReading, readNumber } from './read-number.ts'
export { type QuantityRead, type QuantityReading, readQuantity, type TypedQuantity } from './read-quantity.ts'
export {
  percentFromOneIn,
  percentFromWaterParts,
  volumePercentFromMass,
  type WeighedMix,
  waterPartsFromPercent,
} from './strength.ts'
export { celsiusFrom, celsiusTo, type TemperatureUnit, temperatureUnits } from './temperature.ts'
export type { QuantityKind, UnitOf } from './unit-words.ts'
export { litresFrom, litresTo, type VolumeUnit, volumeUnits } from './volume.ts'
