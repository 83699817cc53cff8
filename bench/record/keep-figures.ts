import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { machine } from '../machine.ts'

/** A count from the command line: `--times 1000`. */
export function timesAsked(usual: number): number {
  const { values } = parseArgs({
    options: { times: { type: 'string' }, heavy: { type: 'boolean' } },
    allowPositionals: true,
  })
  const times = Number(values.times ?? usual)
  if (!Number.isInteger(times) || times < 1)
    throw new RangeError(`--times: found ${values.times}, expected a whole number`)
  return times
}

/** Keeps the figures of a run beside those of the day's other runs, prints them, and ends with 1 where they are not good. */
export function keepFigures(name: string, figures: Record<string, unknown>, good: boolean): void {
  const on = new Date().toISOString().slice(0, 10)
  const file = fileURLToPath(new URL(`../results/record-${on}.json`, import.meta.url))
  const before = existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as Record<string, unknown>) : {}
  const all = { ...before, on, machine: machine(), [name]: { good, ...figures } }
  writeFileSync(file, `${JSON.stringify(all, null, 2)}\n`)
  process.stdout.write(`${JSON.stringify({ [name]: all[name] }, null, 2)}\n`)
  process.exitCode = good ? 0 : 1
}
