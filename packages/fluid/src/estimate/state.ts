/**
 * What is believed of one sump, in this order. The first four change by themselves as time passes, the others only
 * become less certain.
 *
 * | name | symbol | meaning, unit |
 * |---|---|---|
 * | `fill` | r | fluid of the whole system, as a share of the true full mark |
 * | `strength` | C | concentration, percent |
 * | `hardness` | N/V | mg/L as CaCO3 |
 * | `chloride` | | mg/L |
 * | `evaporation` | ln e | logarithm of the share of the mark that evaporates on a working day |
 * | `carryOff` | ln d | logarithm of the share of the mark that is carried off on a working day |
 * | `scale` | ln s | logarithm of the true mark over the plate's |
 * | `bias` | b | what the refractometer shows too much, °Brix |
 * | `titration` | | what titration shows too much, percent |
 * | `holdUp` | q | share of the mark that is out in the lines while the pumps run |
 * | `gauge` | g | what the level shows too much, as a share of the mark: sludge, a mark that was guessed |
 * | `full` | | level up to which it is filled when it is filled to the mark, as a share of the mark: with the pumps running it ends higher |
 * | `gain` | | hardness that comes by itself, from chips, mg/L a day; less than nothing where it drops out |
 * | `pours` | ln m | logarithm of the true strength of pours over the written one |
 */
export const fill = 0
export const strength = 1
export const hardness = 2
export const chloride = 3
export const evaporation = 4
export const carryOff = 5
export const scale = 6
export const bias = 7
export const titration = 8
export const holdUp = 9
export const pours = 10
export const gauge = 11
export const full = 12
export const gain = 13

/** Quantities of the state. */
export const size = 14
/** How many of them, the first, change by themselves. */
export const moving = 4

/**
 * Where time alone takes level, strength and mark hangs on the first quantities only: a belief of so many is followed days ahead in a
 * quarter of the time, to the same bit. Its minerals stay as they were.
 */
export const mixSize = 7
/** How many of those change by themselves: level and strength. */
export const mixMoving = 2
