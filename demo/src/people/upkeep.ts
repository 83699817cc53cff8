import { timeOn } from '../simulate/shop-days.ts'
import { openFrom, type ShopRun, standsStill } from '../simulate/shop-run.ts'
import { onDuty } from './roster.ts'

/** What is done on a plan: sump, task, how often in days. */
const tasks = [
  ['central', 'Filter paper changed', 21],
  ['tc1', 'Chip conveyor cleaned', 35],
  ['mill7', 'Chip conveyor cleaned', 42],
  ['grinder', 'Magnet drum wiped', 28],
] as const

/** Upkeep on its days, and what is machined where, as far as somebody writes it down. */
export function planUpkeep(shop: ShopRun): void {
  for (const [sump, task, every] of tasks) {
    for (let day = 11; day < shop.last; day += every) {
      const ms = timeOn(shop.days, openFrom(shop, day), '12:45')
      shop.agenda.put(ms, () => {
        shop.journal.write({ kind: 'upkeep', sump, atMs: ms, by: 'p3', fields: { task, result: 'done' } })
      })
    }
  }
  planJobs(shop)
}

function planJobs(shop: ShopRun): void {
  const random = shop.randomOf('jobs written')
  for (const { plan, jobs } of shop.sumps) {
    const { id } = plan.document
    jobs.forEach((job, day) => {
      if (day === 0 || job === jobs[day - 1] || standsStill(shop, id, day) || !random.chance(0.4)) return
      const { material, process } = job
      const ms = timeOn(shop.days, day, '06:20') + Math.round(random.between(0, 60)) * 60_000
      const by = onDuty(shop, day, 6)
      shop.agenda.put(ms, () => {
        shop.journal.write({ kind: 'job', sump: id, atMs: ms, by, fields: { material, process } })
      })
    })
  }
}
