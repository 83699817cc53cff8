/** An eye on a dipstick or sight glass: this share of what it sees (common practice, no source). */
export const volumeDoubt = 0.02
/** A titration by drops or millilitres on a bench in the shop: this share of the figure (common practice, no source). */
export const titrationDoubt = 0.05
/** The step of a refractometer that nobody told, °Brix: the usual hand instrument (common practice, no source). */
export const usualResolution = 0.2
