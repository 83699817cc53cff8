import { say, sayCautions, saySheet } from '@sumpbook/fluid'
import { calendarOf } from '../estimate/calendar-of.ts'
import { dayText } from '../estimate/shop-clock.ts'
import type { Due } from '../today/due.ts'
import type { DueSource } from '../today/due-sources.ts'
import type { FoldedJob } from './fold-job.ts'
import { readFolded, slideDay } from './read-jobs.ts'

/** What job sheets ask for today: to go on, to begin on the planned day, and the slide that accepts a cleanout. */
export const dueJobs: DueSource = async (parts, { at, until, reader }) => {
  const { jobs, shop } = await readFolded(parts, { at, until, reader })
  if (jobs.length === 0) return []
  const { clock } = calendarOf(shop.history)
  const today = dayText(Math.floor(clock.at(at.getTime())))
  return jobs.flatMap((job) => {
    const sump = job.opened.sump ?? null
    const name = (sump === null ? undefined : shop.things.sump.get(sump)?.name) ?? sump ?? say('The shop')
    const due = dueOf(job, name, today, shop.history)
    if (due === null || due.dueOn > today) return []
    const whole: Due = {
      kind: 'cleanout',
      sump,
      about: sump === null ? { kind: 'shop' } : null,
      name,
      // Work that has begun is neither capped nor put off: its machine stands.
      exempt: job.state === 'open',
      page: `/cleanouts/sheet/${job.id}`,
      finish: null,
      ...due,
    }
    return [whole]
  })
}

type Said = Pick<Due, 'key' | 'headline' | 'why' | 'dueOn' | 'consequence' | 'cautions'>

function dueOf(job: FoldedJob, name: string, today: string, history: Parameters<typeof slideDay>[1]): Said | null {
  const title = saySheet(job.sheet, name)
  switch (job.state) {
    case 'waiting':
      return {
        key: `slide:${job.id}`,
        headline: say('Take and read the slide that accepts the cleanout of {name}', { name }),
        why: say(
          'One to two weeks after a fresh charge it shows whether a corner was missed; the sheet stays open until it is read.',
        ),
        dueOn: slideDay(job, history) ?? today,
        consequence: 5,
        cautions: sayCautions(['grownSlide']),
      }
    case 'open':
      return {
        key: `job:${job.id}`,
        headline: say('Go on with: {title}', { title }),
        why: job.nextStep === null ? say('It is not finished.') : say('Next: {step}.', { step: job.nextStep.title }),
        dueOn: today,
        consequence: 2,
        cautions: [],
      }
    case 'planned': {
      const on = typeof job.opened.values?.on === 'string' ? job.opened.values.on : null
      if (on === null) return null
      return {
        key: `job:${job.id}`,
        headline: title,
        why: say('It is planned for this day.'),
        dueOn: on,
        consequence: 5,
        cautions: [],
      }
    }
    default:
      return null
  }
}
