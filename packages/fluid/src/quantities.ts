/** Litres of fluid, at the temperature it has; mixing volumes are taken as additive. */
export type Litres = number
/** Percent by volume: `8` is 8 %. */
export type Percent = number
/** °Brix as a refractometer's scale shows it. */
export type Brix = number
/** Milligrams per litre of mix; hardness as CaCO3, nitrate as NO3, nitrite as NO2. */
export type MgPerLitre = number
/** Millisiemens per centimetre at 25 °C. */
export type MilliSiemensPerCm = number
/** Millimetres. */
export type Millimetres = number
/** Degrees Celsius. */
export type Celsius = number
/** Calendar days of 24 hours. */
export type Days = number
/** Litres a day. */
export type LitresPerDay = number
/** A standard deviation in the unit of the quantity it belongs to. */
export type Sd = number

/** A figure with its doubt: the mean, the standard deviation and the central 90 % interval, all in one unit. */
export interface Figure {
  mean: number
  sd: Sd
  /** 5 % of the probability lies below. */
  low90: number
  /** 5 % of the probability lies above. */
  high90: number
}

/** A band that fluid is kept in. */
export interface Band {
  low: Percent
  high: Percent
}
