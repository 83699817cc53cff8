import { writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { machine } from '../machine.ts'

/** Keeps figures in bench/results with the day and the machine. */
export function keepResult(name: string, figures: Record<string, unknown>): void {
  const on = new Date().toISOString().slice(0, 10)
  const file = fileURLToPath(new URL(`../results/estimate-${name}-${on}.json`, import.meta.url))
  const text = JSON.stringify({ on, machine: machine(), ...figures }, null, 2)
  // Lists of figures on one line, as the formatter has them.
  const short = text.replaceAll(/\[\s+([-+.\de,\s]+?)\s+\]/g, (_, list: string) => `[${list.split(/,\s+/).join(', ')}]`)
  writeFileSync(file, `${short}\n`)
}
