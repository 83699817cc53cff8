import { sayCautions, sayList } from '@sumpbook/fluid'
import { dayText } from '../estimate/shop-clock.ts'
import { type GuidedShop, readGuidedShop } from '../guidance/guided-shop.ts'
import type { Due } from '../today/due.ts'
import type { DueSource } from '../today/due-sources.ts'
import type { Sample } from './fold-samples.ts'

/** From so many on, samples that are to be read are one line. */
const many = 4

/** Samples whose result is to be read, or asked for. */
export const dueSamples: DueSource = async (parts, { until }) => {
  const shop = await readGuidedShop(parts, { until })
  const open = shop.samples.filter(
    ({ state, method }) => state === 'past' || (state === 'to-read' && method !== 'laboratory'),
  )
  const groups = Map.groupBy(open, ({ method, state }) => `${method} ${state}`)
  return [...groups.values()].flatMap((samples) =>
    samples.length >= many ? [together(samples, shop)] : samples.map((sample) => alone(sample, shop)),
  )
}

const verbs = {
  'dip slide': 'Read the dip slide',
  'slide for moulds': 'Read the mould slide',
  'standing sample': 'Look at the standing sample',
  laboratory: 'Ask for the report',
}
const plural = {
  'dip slide': 'dip slides',
  'slide for moulds': 'mould slides',
  'standing sample': 'standing samples',
  laboratory: 'reports',
}

function alone(sample: Sample, shop: GuidedShop): Due {
  const name = shop.things.sump.get(sample.sump)?.name ?? sample.sump
  return {
    ...of(sample, shop),
    key: `result:${sample.id}`,
    sump: sample.sump,
    about: null,
    name,
    headline: `${verbs[sample.method]} of ${name}`,
    why: whyOf(sample),
    page: `/tests/samples#sample-${sample.id}`,
  }
}

function together(samples: readonly Sample[], shop: GuidedShop): Due {
  const first = samples.toSorted((a, b) => (a.readFrom < b.readFrom ? -1 : 1))[0]!
  const names = [...new Set(samples.map(({ sump }) => shop.things.sump.get(sump)?.name ?? sump))]
  const shown = names.length > 6 ? [...names.slice(0, 5), `${names.length - 5} more`] : names
  const verb = first.method === 'laboratory' ? 'Ask for' : first.method === 'standing sample' ? 'Look at' : 'Read'
  return {
    ...of(first, shop),
    key: `results:${first.method}:${first.state}`,
    sump: null,
    about: { kind: 'shop' },
    name: 'The round',
    headline: `${verb} ${samples.length} ${plural[first.method]}`,
    why: `${sayList(shown)}. ${whyOf(first)}`,
    page: '/tests/samples',
  }
}

const of = ({ method, readFrom }: Sample, { clock }: GuidedShop) => ({
  kind: 'result' as const,
  dueOn: dayText(Math.floor(clock.at(Date.parse(readFrom)))),
  consequence: 5,
  exempt: false,
  cautions: method === 'dip slide' || method === 'slide for moulds' ? sayCautions(['grownSlide']) : [],
  finish: null,
})

function whyOf({ state, method, window }: Sample): string {
  if (method === 'laboratory') return 'The sample was sent two weeks ago and no report was written down.'
  if (state === 'past')
    return `Its window of ${window.fromHours} to ${window.toHours} hours has closed: read it as it is, or take a fresh one.`
  return `It is read ${window.fromHours} to ${window.toHours} hours after it was taken; its own instructions come first.`
}
