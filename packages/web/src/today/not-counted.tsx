import { useStanding } from '../offline/use-standing.ts'
import { sayNotCounted } from './say-not-counted.ts'

/** Under the day's first sentence: what waits on this device is in neither it nor the cart. */
export function NotCounted() {
  const words = sayNotCounted(useStanding())
  return words === '' ? null : (
    <p class="note" role="status">
      {words}
    </p>
  )
}
