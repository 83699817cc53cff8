import { text } from 'node:stream/consumers'
import { parseArgs } from 'node:util'
import { type Calculation, calculations, refusal, runCalculation } from '@sumpbook/book'
import { readNumber } from '@sumpbook/fluid'
import { z } from 'zod'
import { type Command, exits, UsageError, type World } from '../command.ts'
import { commonOptions, unitsOf } from '../options.ts'

const names = () => [...calculations.values()].map(({ name, summary }) => `  ${name.padEnd(14)} ${summary}`).join('\n')

/** One computation by name. */
export const calc: Command = {
  summary: 'One computation by name, from flags or a JSON object on standard input',
  usage: `sumpbook calc NAME [--json] [--units us|metric|imperial] [flags]

  Flags are the input's names in kebab-case (--max-strength 12); lists and objects are JSON. Without flags one JSON
  object is read from standard input. Canonical units: litres, percent by volume, mm, mg/L, days.

${names()}`,
  run: async (args, world) => {
    const [name = '', ...rest] = args
    const calculation = calculations.get(name)
    if (calculation === undefined) throw new UsageError(`There is no calculation "${name}". There are:\n${names()}`)
    const { given, json, units } = await inputOf(calculation, rest, world)
    const { input, output } = runCalculation(calculation, given)
    const lines = json
      ? [JSON.stringify(output, null, 2)]
      : calculation.say(output, { units: unitsOf(units) ?? 'metric' }, input)
    world.stdout.write(`${lines.filter((line) => line !== '').join('\n')}\n`)
    return exits.done
  },
}

type Property = { type?: string; items?: unknown }

async function inputOf(calculation: Calculation, args: string[], world: World) {
  const properties =
    (z.toJSONSchema(calculation.input, { io: 'input' }) as { properties?: Record<string, Property> }).properties ?? {}
  const flags = Object.fromEntries(Object.keys(properties).map((field) => [kebab(field), { type: 'string' as const }]))
  const { values } = parseArgs({ args: withNegatives(args), options: { ...commonOptions, ...flags }, strict: true })
  const {
    json = false,
    units,
    language: _,
    numbers: __,
    ...own
  } = values as Record<string, string | boolean | undefined>
  const fields = Object.keys(properties).filter((field) => own[kebab(field)] !== undefined)
  const given =
    fields.length === 0
      ? parseJson(await stdinOf(world))
      : Object.fromEntries(
          fields.map((field) => [field, valueFrom(String(own[kebab(field)]), properties[field]!, field)]),
        )
  return { given, json: json === true, units: units as string | undefined }
}

/** `--volume -5` is a number below 0, not another option. */
const withNegatives = (args: readonly string[]) =>
  args.flatMap((arg, i) => {
    const next = args[i + 1]
    if (i > 0 && isNegative(arg) && isFlag(args[i - 1])) return []
    return isFlag(arg) && next !== undefined && isNegative(next) ? [`${arg}=${next}`] : [arg]
  })
const isFlag = (arg: string | undefined) => arg !== undefined && /^--[^=]+$/.test(arg)
const isNegative = (arg: string) => /^-[\d.,]/.test(arg)

const kebab = (field: string) => field.replaceAll(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)

/** A number may have a comma for its point; a word stays a word; lists and objects are JSON. */
function valueFrom(typed: string, { type }: Property, field: string): unknown {
  if (type === 'number' || type === 'integer') {
    const number = readNumber(typed, { decimal: '.' })
    if ('fault' in number) throw refusal([{ pointer: `/${field}`, found: JSON.stringify(typed), expected: 'a number' }])
    return number.value
  }
  if (type === 'string') return typed
  try {
    return JSON.parse(typed) as unknown
  } catch {
    throw refusal([{ pointer: `/${field}`, found: JSON.stringify(typed), expected: 'a value as JSON' }])
  }
}

async function stdinOf({ stdin }: World): Promise<string> {
  if (stdin.isTTY === true) throw new UsageError('expected flags, or a JSON object on standard input')
  return text(stdin)
}

function parseJson(given: string): unknown {
  try {
    return JSON.parse(given) as unknown
  } catch {
    throw refusal([
      { pointer: '', found: given.trim() === '' ? 'nothing' : 'text that is not JSON', expected: 'one JSON object' },
    ])
  }
}
