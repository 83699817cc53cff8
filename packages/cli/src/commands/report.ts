import { type MonthReport, monthCsv, readMonth } from '@sumpbook/book'
import { costPartNames, sayCents, sayMonth, sayVolume } from '@sumpbook/fluid'
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
        ([part, money]) => `${costPartNames[part as keyof typeof parts].words} ${sayCents(money, shop)}`,
      )
      const poured = litres.mix + litres.byLevel.mix
      const mix = poured === 0 ? '' : `, ${sayVolume(poured, { units })} poured`
      return `  ${name}: ${sayCents(cents, shop)} (${words.join(', ')})${mix}`
    })
  const pickups = waste.pickups.map(
    ({ at, stream, litres, document }) =>
      `  Picked up ${at.slice(0, 10)}: ${litres === null ? 'amount not written' : sayVolume(litres, { units })} of ${stream}, ${document === null ? 'no document number written' : `document ${document}`}`,
  )
  const withdrawn = corrections.map(({ sump, text, withdrawn: by }) => {
    const name = sumps.find((one) => one.sump === sump)?.name ?? ''
    return `  Withdrawn: ${name} ${text}${by.reason === null ? '' : `: ${by.reason}`}`
  })
  const blocks = [
    `${sayMonth(month)} at ${shop.name === '' ? 'the shop' : shop.name}`,
    sentences.join('\n'),
    perSump.join('\n'),
    cost.gaps.map(({ text }) => text).join('\n'),
    [...pickups, ...withdrawn].join('\n'),
    `Took part: ${people.map(({ id, entries }) => `${id ?? 'without a name'} ${entries}`).join(', ')}`,
    `Entries up to ${head.seq}, chain ${head.hash}`,
  ]
  return `${blocks.filter((block) => block !== '').join('\n\n')}\n`
}
