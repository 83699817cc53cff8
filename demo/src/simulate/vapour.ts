/**
 * Saturation pressure of water vapour over water, kPa.
 *
 *     pressure = 0.6112 × exp(17.62 × celsius / (243.12 + celsius))
 *
 * Within 0.3 % from 0 to 50 °C. Source: Magnus form with the coefficients of WMO No. 8 (2008), annex 4.B, from memory.
 */
export const saturationPressure = (celsius: number): number => 0.6112 * Math.exp((17.62 * celsius) / (243.12 + celsius))
