import { type MonthReport, monthCsv, readMonth } from '@sumpbook/book'
import { costPartNames, say, sayCents, sayMonth, sayReason, sayVolume } from '@sumpbook/fluid'
import { type Command, exits, UsageError } from '../command.ts'
import { withBook } from '../open.ts'
import { parse, unitsOf } from '../options.ts'
import { readSettings } from '../settings.ts'

/** The report of a month. */
export const report: Command = {
  summary: 'What a month cost and what was done in it, from the entries that stand',
  usage: `sumpbook report MONTH [--csv] [--units us|metric|imperial] [--data FOLDER] [--json]

  MONTH  as 2026-10
  --csv  its table by sump`,
  run: async (args, world) => {
    const { values, positionals } = parse(args, { csv: { type: 'boolean', default: false } })
    const [month, ...more] = positionals
    if (month === undefined || more.length > 0 || !/^\d{4}-(0[1-9]|1[0-2])$/.test(month)) {
      throw new UsageError(`found "${positionals.join(' ')}", expected one month such as 2026-10`)
    }
    const units = unitsOf(values.units)
    const reader = units === undefined ? {} : { units }
    const made = await withBook(readSettings(values, world), (book) =>
      book.ask((parts, at) => readMonth(parts, { month, at, reader })),
    )
    const text = values.json
      ? `${JSON.stringify(made, null, 2)}\n`
      : values.csv
        ? monthCsv(made)
        : reportText(made, units)
    world.stdout.write(text)
    return exits.done
  },
}

function reportText(made: MonthReport, units = made.shop.units): string {
  const { shop, month, sentences, cost, sumps, waste, corrections, people, head } = made
  const perSump = cost.sumps
    .filter(({ cents }) => cents > 0)
    .map(({ name, cents, litres, parts }) => {
      const of = Object.entries(parts).filter(([, part]) => part > 0)
      const words = of.map(
        ([part, money]) => `${say(costPartNames[part as keyof typeof parts].words)} ${sayCents(money, shop)}`,
      )
      const poured = litres.mix + litres.byLevel.mix
      const line = `  ${name}: ${sayCents(cents, shop)} (${words.join(', ')})`
      return poured === 0 ? line : say('{line}, {volume} poured', { line, volume: sayVolume(poured, { units }) })
    })
  const pickups = waste.pickups.map(({ at, stream, litres, document }) => {
    const picked = {
      day: at.slice(0, 10),
      amount: litres === null ? say('amount not written') : sayVolume(litres, { units }),
      stream: stream ?? say('waste without a stream'),
    }
    return document === null
      ? `  ${say('Picked up {day}: {amount} of {stream}, no document number written', picked)}`
      : `  ${say('Picked up {day}: {amount} of {stream}, document {document}', { ...picked, document })}`
  })
  const withdrawn = corrections.map(({ sump, text, withdrawn: by }) => {
    const name = sumps.find((one) => one.sump === sump)?.name ?? ''
    const words = say('Withdrawn: {name} {text}', { name, text })
    return by.reason === null ? `  ${words}` : `  ${words}: ${sayReason(by.reason)}`
  })
  const blocks = [
    say('{month} at {shop}', { month: sayMonth(month), shop: shop.name === '' ? say('the shop') : shop.name }),
    sentences.join('\n'),
    perSump.join('\n'),
    cost.gaps.map(({ text }) => text).join('\n'),
    [...pickups, ...withdrawn].join('\n'),
    say('Took part: {people}', {
      people: people.map(({ id, entries }) => `${id ?? say('without a name')} ${entries}`).join(', '),
    }),
    say('Entries up to {place}, chain {hash}', { place: head.seq, hash: head.hash }),
  ]
  return `${blocks.filter((block) => block !== '').join('\n\n')}\n`
}
