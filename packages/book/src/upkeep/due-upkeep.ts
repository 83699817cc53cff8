import { say, sayCautions, sayTask } from '@sumpbook/fluid'
import type { Due } from '../today/due.ts'
import type { DueSource } from '../today/due-sources.ts'
import { readUpkeep } from './read-upkeep.ts'
import type { UpkeepLine } from './upkeep-types.ts'

/** From so many on, the same task at many sumps is one line. */
const many = 4

/** Upkeep that is due, each finished by one tap where doing it is all there is to say. */
export const dueUpkeep: DueSource = async (parts, { at, until }) => {
  const { tasks } = await readUpkeep(parts, { at, until })
  const due = tasks.filter(({ isDue }) => isDue)
  const groups = Map.groupBy(due, ({ task, counts = 'upkeep' }) => `${counts} ${task.toLowerCase()}`)
  return [...groups.values()].flatMap((lines) => (lines.length >= many ? [together(lines)] : lines.map(alone)))
}

function alone(line: UpkeepLine): Due {
  const { id, task, sump, about, name, caution } = line
  return {
    ...common(line),
    key: `upkeep:${id}`,
    sump: sump ?? null,
    about: sump !== undefined ? null : about === undefined ? { kind: 'shop' } : withoutUndefined(about),
    name,
    headline:
      sump === undefined && about === undefined
        ? say('Due: {task}', { task: sayTask(task) })
        : `${name}: ${sayTask(task)}`,
    why: line.sentence,
    cautions: [...(sump === undefined ? [] : sayCautions(['handsIn'])), ...(caution === undefined ? [] : [caution])],
    finish: finishOf(line),
  }
}

function together(lines: readonly UpkeepLine[]): Due {
  const first = lines[0]!
  return {
    ...common(first),
    key: `upkeep:round:${first.counts ?? 'upkeep'}:${first.task.toLowerCase()}`,
    sump: null,
    about: { kind: 'shop' },
    name: say('The round'),
    headline: say('{count, plural, one {{task} at # place} other {{task} at # places}}', {
      task: sayTask(first.task),
      count: lines.length,
    }),
    why: `${lines.map(({ name }) => name).join(', ')}.`,
    cautions: sayCautions(['handsIn']),
    finish: null,
  }
}

const common = ({ dueOn, counts }: UpkeepLine) => ({
  kind: counts === 'check' ? ('check' as const) : ('upkeep' as const),
  dueOn,
  consequence: 7,
  exempt: false,
  page: '/cleanouts/upkeep',
})

/** A check and an analysis carry figures, and are written where these are typed; so is oil, whose litres are measured if at all. */
function finishOf({ task, counts = 'upkeep' }: UpkeepLine): Due['finish'] {
  if (counts === 'upkeep') return { kind: 'upkeep', task, result: 'done' }
  return counts === 'skim' ? { kind: 'skim' } : null
}

const withoutUndefined = ({ kind, id }: { kind: string; id?: string | undefined }) =>
  id === undefined ? { kind } : { kind, id }
