import { message, say, speech } from '@sumpbook/fluid'
import type { Read } from './read-class.ts'

/** The pictures that a slide is held against: how many germs each stands for, CFU/mL. */
export const slidePictures: readonly { power: string; value: Read }[] = [
  { power: message('under 10³'), value: { below: 1000 } },
  { power: '10³', value: 1e3 },
  { power: '10⁴', value: 1e4 },
  { power: '10⁵', value: 1e5 },
  { power: '10⁶', value: 1e6 },
  { power: '10⁷', value: { atLeast: 1e7 } },
]

/** What a picture stands for, the zeros written out. */
export function sayPicture(value: Read): string {
  const figure = (count: number) => new Intl.NumberFormat(speech().numbers).format(count)
  if (typeof value === 'number') return figure(value)
  return 'atLeast' in value
    ? say('{count} or more', { count: figure(value.atLeast) })
    : say('fewer than the first picture')
}
