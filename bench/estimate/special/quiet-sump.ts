import { timeAt, type Written } from './plain-book.ts'

/** A sump that loses the same every day and is looked at and filled to its mark each Monday and Thursday. */
export interface QuietSump {
  id: string
  fluid: string
  brixFactor: number
  target: number
  /** Litres. */
  mark: number
  /** Litres a day. */
  evaporation: number
  carryOff: number
}

/** Days of the week, from 0, of the looks. */
const looks = [0, 3]

/** What one look found: °Brix and litres as they really are. */
export interface Found {
  day: number
  brix: number
  litres: number
}

/** A quiet sump's journal from its charge on day 0, the last look on `lastDay` included, and what stands there after it. */
export function quietSump(
  sump: QuietSump,
  lastDay: number,
  read: (found: Found) => number,
): { written: Written[]; percent: number } {
  const { id, mark, target, brixFactor, evaporation, carryOff } = sump
  const written: Written[] = [
    {
      atMs: timeAt(0, 6),
      kind: 'charge',
      sump: id,
      volume: mark,
      strength: target,
      water: 'tap',
      fluid: sump.fluid,
      heldBack: 0,
    },
  ]
  let litres = mark
  let concentrate = (mark * target) / 100
  for (let day = 1; day <= lastDay; day++) {
    const left = litres - evaporation - carryOff
    // M = M₀ · (V/V₀)^(D/(E+D)), the solution of dM/dt = −D·M/V.
    concentrate *= (left / litres) ** (carryOff / (evaporation + carryOff))
    litres = left
    if (!looks.includes(day % 7)) continue
    const brix = read({ day, brix: (100 * concentrate) / litres / brixFactor, litres })
    written.push({
      atMs: timeAt(day, 6),
      kind: 'reading',
      sump: id,
      brix: Math.round(10 * brix) / 10,
      volume: Math.round(litres),
      instrument: 'refractometer',
    })
    const poured = Math.round(mark - litres)
    const strength = Math.max(0, Math.round((2 * (target * mark - 100 * concentrate)) / poured) / 2)
    written.push({ atMs: timeAt(day, 6, 10), kind: 'addition', sump: id, volume: poured, strength, water: 'tap' })
    litres += poured
    concentrate += (poured * strength) / 100
  }
  return { written, percent: (100 * concentrate) / litres }
}
