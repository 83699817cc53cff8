import { costPartNames, say, sayCents } from '@sumpbook/fluid'

export type CostPartId = keyof typeof costPartNames
const parts = Object.keys(costPartNames) as CostPartId[]

/** What all sumps cost together: as much as the foot of a table of costs says. */
interface AllCost {
  cents: number
  parts: Readonly<Record<CostPartId, number>>
}

/** The parts for which a table of costs has a column. */
export const partsThatCost = (cost: AllCost): CostPartId[] => parts.filter((part) => cost.parts[part] > 0)

/** How cents are said in a table of costs: what cost nothing is a dash. */
export const sayOrDash =
  ({ currency }: { currency: string }) =>
  (cents: number): string =>
    cents === 0 ? '–' : sayCents(cents, { currency })

/** The foot of a table of costs: all sumps together, by part and in all. */
export function AllSumps({
  shown,
  cost,
  money,
}: {
  shown: readonly CostPartId[]
  cost: AllCost
  money(cents: number): string
}) {
  return (
    <tfoot>
      <tr>
        <th scope="row">{say('All')}</th>
        {shown.map((part) => (
          <td key={part} class="figure desk">
            {money(cost.parts[part])}
          </td>
        ))}
        <td class="figure">{money(cost.cents)}</td>
      </tr>
    </tfoot>
  )
}
