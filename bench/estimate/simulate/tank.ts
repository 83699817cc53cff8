/** What is really in a sump: amounts, never ratios. */
export interface Tank {
  /** Litres. */
  water: number
  /** Litres of concentrate, product by product. */
  concentrates: number[]
  /** mg as CaCO3. */
  hardness: number
  /** mg of other dissolved salts. */
  salts: number
  /** °Brix that tramp oil and dirt feign. */
  oil: number
}

/** What happens to hardness and concentrate beside the pouring. */
export interface Chemistry {
  /** Share of the concentrate used up a day. */
  depletion: number
  /** Share of the hardness above 150 mg/L that drops out as scum a day. */
  scum: number
  /** mg/L that chips give a day. */
  chips: number
}

/** What is poured. */
export interface Pour {
  /** Litres of mix. */
  volume: number
  /** Percent. */
  strength: number
  product: number
  /** mg/L of the water. */
  hardness: number
  salts: number
}

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0)

export const volumeOf = ({ water, concentrates }: Tank): number => water + sum(concentrates)
export const concentrationOf = (tank: Tank): number => (100 * sum(tank.concentrates)) / Math.max(volumeOf(tank), 1e-9)
export const hardnessOf = (tank: Tank): number => tank.hardness / Math.max(volumeOf(tank), 1e-9)

export function emptyTank(products: number): Tank {
  return { water: 0, concentrates: Array<number>(products).fill(0), hardness: 0, salts: 0, oil: 0 }
}

export function pour(tank: Tank, { volume, strength, product, hardness, salts }: Pour): void {
  const concentrate = (volume * strength) / 100
  tank.concentrates[product]! += concentrate
  tank.water += volume - concentrate
  tank.hardness += (volume - concentrate) * hardness
  tank.salts += (volume - concentrate) * salts
}

/** Takes fluid away as it is, at most all but a litre, and says what went. */
export function takeFrom(tank: Tank, volume: number): Tank {
  const whole = volumeOf(tank)
  const share = Math.min(Math.max(volume, 0), Math.max(whole - 1, 0)) / Math.max(whole, 1e-9)
  const taken: Tank = {
    water: tank.water * share,
    concentrates: tank.concentrates.map((litres) => litres * share),
    hardness: tank.hardness * share,
    salts: tank.salts * share,
    oil: tank.oil,
  }
  tank.water -= taken.water
  tank.concentrates = tank.concentrates.map((litres, i) => litres - taken.concentrates[i]!)
  tank.hardness -= taken.hardness
  tank.salts -= taken.salts
  return taken
}

export function join(tank: Tank, other: Tank): void {
  tank.water += other.water
  tank.concentrates = tank.concentrates.map((litres, i) => litres + other.concentrates[i]!)
  tank.hardness += other.hardness
  tank.salts += other.salts
}

/** A short time passes: `evaporated` litres of water go, `carried` litres of fluid go, chemistry does its part. */
export function pass(
  tank: Tank,
  { evaporated, carried, days }: { evaporated: number; carried: number; days: number },
  { depletion, scum, chips }: Chemistry,
): void {
  tank.water = Math.max(tank.water - evaporated, tank.water * 0.05)
  takeFrom(tank, carried)
  tank.concentrates = tank.concentrates.map((litres) => litres * (1 - depletion * days))
  const volume = volumeOf(tank)
  const excess = Math.max(tank.hardness - 150 * volume, 0)
  tank.hardness += chips * volume * days - excess * scum * days
}
