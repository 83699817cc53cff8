import { message, say } from '../words/index.ts'

/** What upkeep is usually called: in English where it is taken on and written down, whoever reads it. */
export const usualTasks = {
  skim: message('Tramp oil skimmed'),
  basket: message('Chip basket and strainer emptied'),
  pumps: message('Pumps and hoses looked at'),
  filter: message('Filter changed'),
  mixer: message('Mixer checked'),
  instrument: message('Zero and reference checked'),
  water: message('Make-up water analysed'),
  purifier: message('Purifier: filters, resin and conductivity looked at'),
} as const

const known: ReadonlySet<string> = new Set(Object.values(usualTasks))

/** A task as people read it: a usual one in their language, one of the shop's own as it was typed. */
export const sayTask = (task: string): string => (known.has(task) ? say(task) : task)
