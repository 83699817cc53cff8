import { readFile } from 'node:fs/promises'
import { text } from 'node:stream/consumers'
import { type EstimateDocument, estimateFile, readAhead, refusal, type SumpAnswer } from '@sumpbook/book'
import { message, type Reader, say, sayConcentration, sayPercent, sayVolume } from '@sumpbook/fluid'
import { type Command, exits, UsageError, type World } from '../command.ts'
import { withBook } from '../open.ts'
import { parse, unitsOf } from '../options.ts'
import { readSettings } from '../settings.ts'

/** Where every sump stands, and where it goes. */
export const estimate: Command = {
  summary: 'Where every sump stands, how sure that is, and where it goes with nothing added',
  usage: `sumpbook estimate [BOOK.json] [--at TIME] [--ahead 7,14] [--sump ID] [--units us|metric|imperial] [--data FOLDER] [--json]

  BOOK.json  a book file, which is only read; - reads standard input; without one the book of --data is asked
  --at       another time than now, as 2026-03-03T09:30:00+01:00; entries after it do not count
  --ahead    days ahead; 7,14 without it
  --sump     one sump alone, by its id`,
  run: async (args, world) => {
    const { values, positionals } = parse(args, {
      at: { type: 'string' },
      ahead: { type: 'string' },
      sump: { type: 'string' },
    })
    if (positionals.length > 1) throw new UsageError(`expected at most one file, found ${positionals.length}`)
    const units = unitsOf(values.units)
    const question = {
      ...(values.at === undefined ? {} : { at: instantOf(values.at) }),
      ...(values.ahead === undefined ? {} : { ahead: readAhead(values.ahead) }),
      ...(values.sump === undefined ? {} : { sump: values.sump }),
    }
    const reader = units === undefined ? {} : { units }
    const [file] = positionals
    const document =
      file === undefined
        ? await withBook(readSettings(values, world), (book) => book.estimate({ ...question, reader }))
        : await estimateFile(await fileText(file, world), { at: new Date().toISOString(), ...question }, reader)
    const said = values.json
      ? JSON.stringify(document, null, 2)
      : documentText(document, { units: units ?? document.shop.units })
    world.stdout.write(`${said}\n`)
    return exits.done
  },
}

/** @throws {UsageError} no time with offset */
function instantOf(text: string): string {
  if (Number.isNaN(Date.parse(text)) || !/T.*(Z|[+-]\d\d:\d\d)$/.test(text)) {
    throw new UsageError(`--at: found "${text}", expected a time with offset such as 2026-03-03T09:30:00+01:00`)
  }
  return text
}

async function fileText(file: string, { stdin }: World): Promise<string> {
  if (file === '-') return text(stdin)
  return readFile(file, 'utf8').catch(() => {
    throw refusal([{ pointer: '', found: `no file at ${file}`, expected: 'a book file that can be read' }], 'file')
  })
}

function documentText({ at, learnt, sumps }: EstimateDocument, reader: Reader): string {
  const all = Object.values(sumps)
  if (all.length === 0) return say('This book has no sumps yet.')
  return [say('At {time}', { time: at }), ...all.map((sump) => sumpText(sump, reader)), learnt.text].join('\n\n')
}

function sumpText({ name, now, ahead, crossing, recipe, doubts }: SumpAnswer, reader: Reader): string {
  const standing = say('{concentration} in {volume}; {evaporation} a day evaporate, {carryOff} are carried off.', {
    concentration: sayConcentration(now.concentration, reader),
    volume: volumeWords(now.volume, reader),
    evaporation: sayVolume(now.evaporation.mean, reader),
    carryOff: sayVolume(now.carryOff.mean, reader),
  })
  const later = ahead.map(({ days, concentration, volume }) =>
    say('In {days} days, with nothing added: {concentration} in {volume}.', {
      days,
      concentration: sayConcentration(concentration, reader),
      volume: volumeWords(volume, reader),
    }),
  )
  const isOil = recipe.reasons.includes('straight-oil')
  const lines = [
    ...(isOil ? [] : [standing, ...later]),
    ...(crossing === null ? [] : [crossingWords(crossing, reader)]),
    ...doubts.map(({ text, at }) => `${at.slice(0, 10)}: ${text}`),
    ...recipe.notes,
  ]
  return [name, ...lines.map((line) => `  ${line}`)].join('\n')
}

const volumeWords = ({ mean, low90, high90 }: { mean: number; low90: number; high90: number }, reader: Reader) =>
  say('{volume} ({low} to {high})', {
    volume: sayVolume(mean, reader),
    low: sayVolume(low90, reader),
    high: sayVolume(high90, reader),
  })

const limitWords: Record<NonNullable<SumpAnswer['crossing']>['limit'], string> = {
  'concentration.low': message(
    'It falls under its band {when} unless something is done, with probability {probability}.',
  ),
  'concentration.high': message(
    'It rises above its band {when} unless something is done, with probability {probability}.',
  ),
  'volume.low': message(
    'The level falls to the pumps’ suction {when} unless something is done, with probability {probability}.',
  ),
  'hardness.high': message(
    'Its hardness passes the limit {when} unless something is done, with probability {probability}.',
  ),
  'chloride.high': message(
    'Its chloride passes the limit {when} unless something is done, with probability {probability}.',
  ),
}

function crossingWords(
  { limit, probability, earliest, likely, latest }: NonNullable<SumpAnswer['crossing']>,
  reader: Reader,
) {
  const [from, day, to] = [earliest, likely, latest].map((time) => time.slice(0, 10)) as [string, string, string]
  const when = from === to ? say('about {day}', { day }) : say('about {day} ({from} to {to})', { day, from, to })
  return say(limitWords[limit], { when, probability: sayPercent(100 * probability, reader) })
}
