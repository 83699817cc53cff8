import { lowerFirst, type Reader, sayCount, sayList, sayVolume } from '@sumpbook/fluid'
import type { Entry } from '../schema/entries/index.ts'
import type { Cart, TodayItem } from './today.ts'

/** A shift's note is read out for two days. */
const noteDays = 2

/** Water and concentrate for every pour of the list. */
export function cartOf(items: readonly TodayItem[]): Cart {
  const waters = new Map<string, Cart['waters'][number]>()
  const concentrates = new Map<string, Cart['concentrates'][number]>()
  for (const { recipe, bench, fluid, action } of items) {
    if (recipe.add === null || action === 'change') continue
    const id = recipe.add.waters[0]?.id ?? null
    const name = bench.waters.find((water) => water.id === id)?.name ?? 'water'
    const water = waters.get(name) ?? { id, name, volume: 0 }
    waters.set(name, { ...water, volume: water.volume + recipe.add.water })
    if (recipe.add.concentrate === 0) continue
    const concentrate = concentrates.get(fluid.id) ?? { fluid: fluid.id, name: fluid.name, litres: 0 }
    concentrates.set(fluid.id, { ...concentrate, litres: concentrate.litres + recipe.add.concentrate })
  }
  return { waters: [...waters.values()], concentrates: [...concentrates.values()] }
}

/** The last shift's note, while it is fresh. */
export function handoverOf(entries: readonly Entry[], at: Date): string | null {
  const last = entries.findLast((entry) => entry.kind === 'handover')
  if (last?.kind !== 'handover' || at.getTime() - Date.parse(last.at) > noteDays * 86_400_000) return null
  return last.text ?? null
}

/** The day in a sentence or two. */
export function ledeOf(
  items: readonly TodayItem[],
  { waters, concentrates }: Cart,
  handover: string | null,
  reader: Reader,
): string {
  const pours = items.filter(({ recipe }) => recipe.add !== null || recipe.drawOff > 0).length
  const reads = items.length - pours
  const toDo = [
    pours > 0 ? sayCount(pours, 'sump to fill', 'sumps to fill') : '',
    reads > 0 ? sayCount(reads, 'to read', 'to read') : '',
  ].filter((part) => part !== '')
  const carried = [
    ...waters.map(({ name, volume }) => `${sayVolume(volume, reader)} of ${lowerFirst(name)}`),
    ...concentrates.map(({ name, litres }) => `${sayVolume(litres, reader)} of ${name} concentrate`),
  ]
  return [
    toDo.length === 0 ? 'Nothing to do: every sump was read within the week and is in its band.' : `${sayList(toDo)}.`,
    carried.length === 0 ? '' : `For the cart: ${sayList(carried)}.`,
    handover === null ? '' : `Last shift’s note: “${handover}”`,
  ]
    .filter((sentence) => sentence !== '')
    .join(' ')
}
