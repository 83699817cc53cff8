import { upkeepTasks } from '../shop/upkeep.ts'
import { instantText, timeOn } from '../simulate/shop-days.ts'
import { openFrom, type ShopRun, standsStill } from '../simulate/shop-run.ts'
import { arrangeBefore } from './appointment.ts'
import { keeper, onDuty } from './roster.ts'

/** Days before the last from which on a task was left undone. */
const leftUndone: Readonly<Record<string, number>> = { 'conveyor-mill7': 43, 'magnet-drum': 29 }

/** Upkeep on its days, and what is machined where, as far as somebody writes it down. */
export function planUpkeep(shop: ShopRun): void {
  for (const { id, sump, task, everyDays } of upkeepTasks) {
    if (sump === undefined) continue
    for (let day = 11; day < shop.last - (leftUndone[id] ?? 0) - 4; day += everyDays) {
      const ms = timeOn(shop.days, openFrom(shop, day), '12:45')
      shop.agenda.put(ms, () => {
        shop.journal.write({ kind: 'upkeep', sump, atMs: ms, by: keeper, fields: { task, result: 'done' } })
      })
    }
  }
  planJobs(shop)
  putOffMagnetDrum(shop)
}

function putOffMagnetDrum(shop: ShopRun): void {
  arrangeBefore(shop, 1, '12:50', (ms) => {
    const until = instantText(shop.days, ms + 5 * 86_400_000).slice(0, 10)
    const fields = { what: 'upkeep:magnet-drum', why: 'Grinds a series, no stop before it is done', until }
    shop.journal.write({ kind: 'snooze', sump: 'grinder', atMs: ms, by: keeper, fields })
  })
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
