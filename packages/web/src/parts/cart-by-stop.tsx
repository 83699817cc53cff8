import { say, sayVolume } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import type { Today } from '../api/types.ts'
import { readerOf } from '../say/units.ts'
import { inWalkingOrder } from '../standing/walking-order.ts'
import { WideTable } from './wide-table.tsx'
import './cart-by-stop.css'

/** The stops of the list at which something is poured in, in walking order; a change of the charge is no matter for a cart. */
export const poursOf = ({ items }: Pick<Today, 'items'>): Today['items'] =>
  items.filter(isPour).toSorted(inWalkingOrder)

const isPour = ({ recipe, action }: Today['items'][number]): boolean => recipe.add !== null && action !== 'change'

/** What the cart is for, stop by stop in walking order, with buckets where the shop has them. @param isOpen at first */
export function CartByStop({ today, isOpen, least = 1 }: { today: Today; isOpen: boolean; least?: number }) {
  const [isOpened, setOpened] = useState(isOpen)
  if (today.items.filter(isPour).length < least) return null
  return (
    <details class="cart" open={isOpened} onToggle={(event) => setOpened(event.currentTarget.open)}>
      <summary>{say('The cart, stop by stop')}</summary>
      {isOpened && <Stops today={today} />}
    </details>
  )
}

function Stops({ today }: { today: Today }) {
  const { cart, shop } = today
  const reader = readerOf(shop.units)
  const stops = poursOf(today)
  const water = cart.waters.reduce((sum, { volume }) => sum + volume, 0)
  const concentrate = cart.concentrates.reduce((sum, { litres }) => sum + litres, 0)
  return (
    <WideTable of={say('The cart, stop by stop')}>
      <table>
        <thead>
          <tr>
            <th>{say('Stop')}</th>
            <th class="figure">{say('Water')}</th>
            <th class="figure">{say('Concentrate')}</th>
          </tr>
        </thead>
        <tbody>
          {stops.map(({ sump, name, recipe, fluid, dispensed }) => (
            <tr key={sump}>
              <td>
                {name} <span class="quiet">{fluid.name}</span>
              </td>
              <td class="figure">
                {sayVolume(recipe.add!.water, reader)}
                {dispensed !== null && dispensed.fullWater > 0 && (
                  <span class="quiet">
                    {dispensed.fullWater} × {sayVolume(dispensed.container.capacity, reader)}
                    {dispensed.restWater > 0 && ` + ${sayVolume(dispensed.restWater, reader)}`}
                  </span>
                )}
              </td>
              <td class="figure">
                {recipe.add!.concentrate === 0 ? say('none') : sayVolume(recipe.add!.concentrate, reader)}
              </td>
            </tr>
          ))}
          {stops.length > 1 && (
            <tr class="sum">
              <th>{say('Together')}</th>
              <th class="figure">{sayVolume(water, reader)}</th>
              <th class="figure">{concentrate === 0 ? say('none') : sayVolume(concentrate, reader)}</th>
            </tr>
          )}
        </tbody>
      </table>
    </WideTable>
  )
}
