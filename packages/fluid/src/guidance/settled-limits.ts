/** Where a limit is set, from what holds for a country to what holds for one sump; the later ones know more. */
export const limitLevels = ['guidance', 'shop', 'fluid', 'work', 'sump'] as const
export type LimitLevel = (typeof limitLevels)[number]

export type LimitedQuantity =
  | 'concentration'
  | 'ph'
  | 'hardness'
  | 'chloride'
  | 'conductivity'
  | 'bacteria'
  | 'trampOil'
  | 'nitrite'
  | 'waterNitrate'
  | 'level'

/** `reasonable` and `poor` are where those classes begin; `act` and `change` are falls of pH from its fresh value. */
export type LimitEnd = 'low' | 'target' | 'high' | 'reasonable' | 'poor' | 'act' | 'change'

/** One limit as one level sets it. */
export interface OfferedLimit {
  quantity: LimitedQuantity
  end: LimitEnd
  value: number
  level: LimitLevel
  /** Who says so, with section, edition and date where it has them. */
  source: string
  /** May only be made tighter. */
  binding: boolean
}

/** The limit that holds. */
export interface SettledLimit extends OfferedLimit {
  /** What other levels say, in the order of the levels. */
  others: OfferedLimit[]
  /** A later level that wanted it looser than a binding one lets it be; null without one. */
  refused: OfferedLimit | null
}

/**
 * One limit of each kind for a sump, with who sets it: the most particular level wins (guidance, shop, fluid, work, sump), but a binding one
 * is only ever made tighter. Nothing is made up: what no level sets is not in the answer.
 *
 * @example settledLimits([{ …nitrite high 20, binding }, { …nitrite high 50 of the sump }]) // 20; the sump's 50 is refused
 */
export function settledLimits(offered: readonly OfferedLimit[]): SettledLimit[] {
  const kinds = Map.groupBy(offered, ({ quantity, end }) => `${quantity} ${end}`)
  return [...kinds.values()].map((each) => {
    const rising = each.toSorted((a, b) => limitLevels.indexOf(a.level) - limitLevels.indexOf(b.level))
    const particular = rising.at(-1)!
    const tightest = rising.filter(({ binding }) => binding).toSorted(byTightness)[0]
    const isLooser = tightest !== undefined && byTightness(tightest, particular) < 0
    const holds = isLooser ? tightest : particular
    return { ...holds, others: rising.filter((one) => one !== holds), refused: isLooser ? particular : null }
  })
}

/** The tighter first: a higher floor, a lower everything else. */
function byTightness(a: OfferedLimit, b: OfferedLimit): number {
  return a.end === 'low' ? b.value - a.value : a.value - b.value
}
