import { probabilities, type SumpState, type Surprise } from '../shop-estimate.ts'
import type { Story } from './stories.ts'

/** The stories of a surprise, likeliest first, with the litres they speak of. */
export function storiesOf(
  { branches }: SumpState,
  { number }: Surprise,
): { story: Story; probability: number; volume: number }[] {
  const told = new Map<Story, { story: Story; probability: number; volume: number }>()
  for (const [i, probability] of probabilities(branches).entries()) {
    const { story, volume } = branches[i]!.stories.find(({ surprise }) => surprise === number) ?? {
      story: 'stands' as const,
      volume: 0,
    }
    const before = told.get(story) ?? { story, probability: 0, volume: 0 }
    told.set(story, {
      story,
      probability: before.probability + probability,
      volume: before.volume + probability * volume,
    })
  }
  return [...told.values()]
    .map((one) => ({ ...one, volume: one.probability > 0 ? one.volume / one.probability : 0 }))
    .sort((a, b) => b.probability - a.probability)
}
