import { say, sayVolume } from '@sumpbook/fluid'
import { Link } from 'wouter-preact'
import { useSamples } from '../api/guidance.ts'
import { useToday } from '../api/queries.ts'
import { CartByStop, poursOf } from '../parts/cart-by-stop.tsx'
import { readerOf } from '../say/units.ts'
import { handoverOf } from '../today/lede.ts'

/** Before anybody walks: what goes on the cart, which slides are to be read, and what the last shift left to say. */
export function CartFirst() {
  const { data: today } = useToday()
  const { data: samples } = useSamples()
  if (today === undefined) return null
  const note = handoverOf(today.lede)
  const toRead = samples?.pending.filter(({ state }) => state !== 'growing') ?? []
  const hasPours = poursOf(today).length > 0
  return (
    <section class="cart-first" aria-label={say('Before you walk')}>
      {note !== null && <p class="handover">{note}</p>}
      <p>
        {hasPours
          ? sayCart(today)
          : say('Nothing is to be poured by the list: the cart goes with refractometer and strips.')}
      </p>
      <CartByStop today={today} isOpen={true} />
      {toRead.length > 0 && (
        <>
          <p>
            <strong>
              {say('{count, plural, one {# slide or sample to read:} other {# slides and samples to read:}}', {
                count: toRead.length,
              })}
            </strong>
          </p>
          <ul class="to-read">
            {toRead.map(({ id, name, method, state }) => (
              <li key={id}>
                <Link href={`/tests/samples#sample-${id}`}>
                  {name}, {method}
                </Link>
                {state === 'past' && <span class="quiet"> {say('past its time')}</span>}
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  )
}

/** The same folded, for who goes on with a round. */
export function CartAgain() {
  return (
    <details>
      <summary>{say('The cart')}</summary>
      <CartFirst />
    </details>
  )
}

/** "On the cart: 120 L of tap water, 18 L of Semi 1." */
function sayCart({ cart, shop }: NonNullable<ReturnType<typeof useToday>['data']>): string {
  const reader = readerOf(shop.units)
  const parts = [
    ...cart.waters.map(({ name, volume }) => say('{volume} of {name}', { volume: sayVolume(volume, reader), name })),
    ...cart.concentrates.map(({ name, litres }) =>
      say('{volume} of {name} concentrate', { volume: sayVolume(litres, reader), name }),
    ),
  ]
  return parts.length === 0
    ? say('What is to be poured stands below.')
    : say('On the cart: {parts}.', { parts: parts.join(', ') })
}
