import { message, say, sayCautions, sayList, sayNumber } from '@sumpbook/fluid'
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

const ofOne = {
  'dip slide': message('Read the dip slide of {name}'),
  'slide for moulds': message('Read the mould slide of {name}'),
  'standing sample': message('Look at the standing sample of {name}'),
  laboratory: message('Ask for the report of {name}'),
}
const ofMany = {
  'dip slide': message('{count, plural, one {Read # dip slide} other {Read # dip slides}}'),
  'slide for moulds': message('{count, plural, one {Read # mould slide} other {Read # mould slides}}'),
  'standing sample': message('{count, plural, one {Look at # standing sample} other {Look at # standing samples}}'),
  laboratory: message('{count, plural, one {Ask for # report} other {Ask for # reports}}'),
}

function alone(sample: Sample, shop: GuidedShop): Due {
  const name = shop.things.sump.get(sample.sump)?.name ?? sample.sump
  return {
    ...of(sample, shop),
    key: `result:${sample.id}`,
    sump: sample.sump,
    about: null,
    name,
    headline: say(ofOne[sample.method], { name }),
    why: whyOf(sample),
    page: `/tests/samples#sample-${sample.id}`,
  }
}

function together(samples: readonly Sample[], shop: GuidedShop): Due {
  const first = samples.toSorted((a, b) => (a.readFrom < b.readFrom ? -1 : 1))[0]!
  const names = [...new Set(samples.map(({ sump }) => shop.things.sump.get(sump)?.name ?? sump))]
  const shown =
    names.length > 6
      ? [...names.slice(0, 5), say('{count, plural, one {# more} other {# more}}', { count: names.length - 5 })]
      : names
  return {
    ...of(first, shop),
    key: `results:${first.method}:${first.state}`,
    sump: null,
    about: { kind: 'shop' },
    name: say('The round'),
    headline: say(ofMany[first.method], { count: samples.length }),
    why: say('{names}. {why}', { names: sayList(shown), why: whyOf(first) }),
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
  const { fromHours, toHours } = window
  if (method === 'laboratory') return say('The sample was sent two weeks ago and no report was written down.')
  if (state === 'past')
    return say('Its window of {from} to {to} hours has closed: read it as it is, or take a fresh one.', {
      from: sayNumber(fromHours, 1, {}, 0),
      to: sayNumber(toHours, 1, {}, 0),
    })
  return say('It is read {from} to {to} hours after it was taken; its own instructions come first.', {
    from: sayNumber(fromHours, 1, {}, 0),
    to: sayNumber(toHours, 1, {}, 0),
  })
}
