/** What a sump holds. */
export interface Contents {
  /** All of it, concentrate included. */
  litres: number
  /** Litres of each product's concentrate that are still good. */
  concentrate: number[]
  /** mg as CaCO3. */
  hardness: number
  /** mg of all other salts. */
  salts: number
}

export interface Water {
  /** mg/L as CaCO3. */
  hardness: number
  /** mg/L. */
  salts: number
}

/** What happens in the fluid itself, a day. */
export interface Wear {
  /** Share of the concentrate that is used up; its litres stay as something else. */
  depletion: number
  /** Share of the hardness that drops out. */
  scum: number
  /** mg/L that chips give. */
  chips: number
}

export interface Flows {
  /** Litres of water an hour. */
  evaporation: number
  /** Litres of fluid an hour. */
  carryOff: number
}

export const noFluid = (products: number): Contents => ({
  litres: 0,
  concentrate: Array.from({ length: products }, () => 0),
  hardness: 0,
  salts: 0,
})

export const percentOf = ({ concentrate, litres }: Contents): number =>
  (100 * concentrate.reduce((sum, of) => sum + of, 0)) / litres

/** So many litres at so many percent of a product. */
export function mix(litres: number, percent: number, product: number, water: Water, products: number): Contents {
  const concentrate = (litres * percent) / 100
  const made = noFluid(products)
  made.litres = litres
  made.concentrate[product] = concentrate
  made.hardness = (litres - concentrate) * water.hardness
  made.salts = (litres - concentrate) * water.salts
  return made
}

export function together(one: Contents, other: Contents): Contents {
  return {
    litres: one.litres + other.litres,
    concentrate: one.concentrate.map((of, i) => of + other.concentrate[i]!),
    hardness: one.hardness + other.hardness,
    salts: one.salts + other.salts,
  }
}

/** The same fluid, another amount of it. */
export function portion({ litres, concentrate, hardness, salts }: Contents, wanted: number): Contents {
  const share = wanted / litres
  return {
    litres: wanted,
    concentrate: concentrate.map((of) => of * share),
    hardness: hardness * share,
    salts: salts * share,
  }
}

/**
 * Some hours of constant flows, exactly: V falls along a straight line, and what leaves with the fluid alone keeps
 *
 *     M(t) = M(0) · (V(t)/V(0))^(D/(E+D)) · e^(−k·t)
 *
 * the solution of dM/dt = −D·M/V − k·M. Nothing flows any more when `least` litres are left.
 */
export function flow(
  from: Contents,
  { evaporation, carryOff }: Flows,
  hours: number,
  { depletion, scum, chips }: Wear,
  least: number,
): Contents {
  const all = evaporation + carryOff
  const lost = Math.max(0, Math.min(all * hours, from.litres - least))
  const litres = from.litres - lost
  const kept = all > 0 ? (litres / from.litres) ** (carryOff / all) : 1
  const days = hours / 24
  return {
    litres,
    concentrate: from.concentrate.map((of) => of * kept * Math.exp(-depletion * days)),
    hardness: from.hardness * kept * Math.exp(-scum * days) + chips * litres * days,
    salts: from.salts * kept,
  }
}
