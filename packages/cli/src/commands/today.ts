import type { SumpItem, Today, TodayDue, TodayItem } from '@sumpbook/book'
import { say, sayReason } from '@sumpbook/fluid'
import { type Command, exits, UsageError } from '../command.ts'
import { withBook } from '../open.ts'
import { parse, unitsOf } from '../options.ts'
import { readSettings } from '../settings.ts'

/** The day's list. */
export const today: Command = {
  summary: 'What to pour into which sump today, most consequence first',
  usage: `sumpbook today [--at TIME] [--units us|metric|imperial] [--data FOLDER] [--json]

  --at   another time than now, as 2026-03-03T09:30:00+01:00; entries after it do not count`,
  run: async (args, world) => {
    const { values } = parse(args, { at: { type: 'string' } })
    const units = unitsOf(values.units)
    const at = values.at === undefined ? undefined : instantOf(values.at)
    const list = await withBook(readSettings(values, world), (book) =>
      book.today({ ...(at === undefined ? {} : { at }), ...(units === undefined ? {} : { reader: { units } }) }),
    )
    world.stdout.write(values.json ? `${JSON.stringify(list, null, 2)}\n` : listText(list))
    return exits.done
  },
}

function instantOf(text: string): Date {
  const at = new Date(text)
  if (Number.isNaN(at.getTime()) || !/T.*(Z|[+-]\d\d:\d\d)$/.test(text)) {
    throw new UsageError(`--at: found "${text}", expected a time with offset such as 2026-03-03T09:30:00+01:00`)
  }
  return at
}

function listText({ shop, lede, items, round, due, later, putOff, calm, quarantined }: Today): string {
  const cautions = [
    ...new Set([...items.flatMap(({ words }) => words.cautions), ...due.flatMap((one) => one.cautions)]),
  ]
  const [atOnce, others] = [due.filter((one) => one.atOnce), due.filter((one) => !one.atOnce)]
  const off = [
    ...putOff.items.map((item) => putOffText({ ...item, headline: item.words.headline })),
    ...putOff.due.map(putOffText),
  ]
  const title = shop.name === '' ? say('Today') : say('Today at {shop}', { shop: shop.name })
  const blocks = [
    title,
    lede,
    ...dueBlock(say('At once:'), atOnce),
    ...items.map(itemText),
    ...(round === null ? [] : [[round.sentence, ...round.items.map(({ name }) => `  ${name}`)].join('\n')]),
    ...dueBlock(say('Also due:'), others),
    ...(later === null ? [] : [laterText(later)]),
    ...(off.length === 0 ? [] : [[say('Put off:'), ...off].join('\n')]),
    ...(calm.length === 0 ? [] : [[say('Nothing to do:'), ...calm.map(calmText)].join('\n')]),
    ...(cautions.length === 0 ? [] : [cautions.join('\n')]),
    ...(quarantined === 0
      ? []
      : [say('{count} entries name things this book does not know; they count nowhere yet.', { count: quarantined })]),
  ]
  return `${blocks.join('\n\n')}\n`
}

function itemText({ name, place, words, why, alternatives, isNew, since }: TodayItem, index: number): string {
  const open = isNew ? '' : say('Open since {day}.', { day: since.slice(0, 10) })
  const lines = [`${words.headline}.`, words.how, words.outcome, why, open, ...alternatives].filter(
    (line) => line !== '',
  )
  const number = `${index + 1}.`.padEnd(4)
  return [`${number}${name}${place === null ? '' : `, ${place}`}`, ...lines.map((line) => `    ${line}`)].join('\n')
}

const dueBlock = (title: string, due: readonly TodayDue[]) =>
  due.length === 0 ? [] : [[title, ...due.map(dueText)].join('\n')]

const dueText = ({ headline, why }: TodayDue) => `  ${headline}. ${why}`

function laterText({ sentence, items, due }: NonNullable<Today['later']>): string {
  const lines = items.map(({ name, words }) => `  ${name}: ${words.headline}.`)
  return [say('Later: {sentence}', { sentence }), ...lines, ...due.map(dueText)].join('\n')
}

function putOffText({ name, headline, snoozed }: Pick<TodayDue, 'name' | 'headline' | 'snoozed'>): string {
  const words = { name, headline, until: snoozed?.until ?? '' }
  return snoozed?.why
    ? `  ${say('{name}: {headline}. Until {until}: {why}.', { ...words, why: sayReason(snoozed.why) })}`
    : `  ${say('{name}: {headline}. Until {until}.', words)}`
}

function calmText({ name, sentence, ahead: { drift, crossing, check } }: SumpItem): string {
  return `  ${name}: ${[sentence, drift, crossing, check].filter((words) => words !== '').join(' ')}`
}
