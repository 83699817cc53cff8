import { lowerFirst, type Reader, say, sayList, sayPutOff, sayVolume } from '@sumpbook/fluid'
import { withdrawnBy } from '../journal/withdrawn.ts'
import type { Entry } from '../schema/entries/index.ts'
import type { JournalReader } from '../store/store.ts'
import type { Cart, SumpItem } from './today.ts'

/** A shift's note is read out for two days. */
const noteDays = 2

/** Water and concentrate for every pour of the list. */
export function cartOf(items: readonly SumpItem[]): Cart {
  const waters = new Map<string, Cart['waters'][number]>()
  const concentrates = new Map<string, Cart['concentrates'][number]>()
  for (const { recipe, bench, fluid, action } of items) {
    if (recipe.add === null || action === 'change') continue
    const id = recipe.add.waters[0]?.id ?? null
    const name = bench.waters.find((water) => water.id === id)?.name ?? say('water')
    const water = waters.get(name) ?? { id, name, volume: 0 }
    waters.set(name, { ...water, volume: water.volume + recipe.add.water })
    if (recipe.add.concentrate === 0) continue
    const concentrate = concentrates.get(fluid.id) ?? { fluid: fluid.id, name: fluid.name, litres: 0 }
    concentrates.set(fluid.id, { ...concentrate, litres: concentrate.litres + recipe.add.concentrate })
  }
  return { waters: [...waters.values()], concentrates: [...concentrates.values()] }
}

/** The last shift's note, while it is fresh. */
export async function readHandover(journal: JournalReader, { at, until }: { at: Date; until: Date }) {
  const since = new Date(at.getTime() - noteDays * 86_400_000).toISOString()
  const [notes, voids] = await Promise.all([
    journal.entries({ kinds: ['handover'], order: 'time', since, until: until.toISOString() }),
    journal.voids(),
  ])
  const withdrawn = withdrawnBy(voids)
  const last = notes.findLast(({ id }) => !withdrawn.has(id))
  if (last === undefined) return null
  const entry = JSON.parse(last.body) as Entry
  return entry.kind === 'handover' ? (entry.text ?? null) : null
}

const nothingToDo = (putOff: number) =>
  putOff === 0
    ? say('Nothing to do: every sump is in its band, and none is due to be read.')
    : say('Nothing else to do: every other sump is in its band.')

/** The day in a sentence or two. */
export function ledeOf(
  items: readonly SumpItem[],
  { waters, concentrates }: Cart,
  folded: { round: number; putOff: number; due: number },
  handover: string | null,
  reader: Reader,
): string {
  const pours = items.filter(({ recipe }) => recipe.add !== null || recipe.drawOff > 0).length
  const doubts = items.filter(({ condition }) => condition === 'doubt').length
  const reads = items.length - pours - doubts + folded.round
  const toDo = [
    pours > 0 ? say('{count, plural, one {# sump to fill} other {# sumps to fill}}', { count: pours }) : '',
    doubts > 0 ? say('{count, plural, one {# to settle} other {# to settle}}', { count: doubts }) : '',
    reads > 0 ? say('{count, plural, one {# to read} other {# to read}}', { count: reads }) : '',
    folded.due > 0
      ? say('{count, plural, one {# other thing due} other {# other things due}}', { count: folded.due })
      : '',
  ].filter((part) => part !== '')
  const carried = [
    ...waters.map(({ name, volume }) =>
      say('{volume} of {water}', { volume: sayVolume(volume, reader), water: lowerFirst(name) }),
    ),
    ...concentrates.map(({ name, litres }) =>
      say('{volume} of {fluid} concentrate', { volume: sayVolume(litres, reader), fluid: name }),
    ),
  ]
  return [
    toDo.length === 0 ? nothingToDo(folded.putOff) : say('{things}.', { things: sayList(toDo) }),
    carried.length === 0 ? '' : say('For the cart: {things}.', { things: sayList(carried) }),
    folded.putOff === 0 ? '' : sayPutOff(folded.putOff),
    handover === null ? '' : say('Last shift’s note: “{note}”', { note: handover }),
  ]
    .filter((sentence) => sentence !== '')
    .join(' ')
}
