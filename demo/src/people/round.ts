import type { Random } from '../simulate/random.ts'
import { dayHourOf, timeOn } from '../simulate/shop-days.ts'
import { type ShopRun, standsStill, sumpOf } from '../simulate/shop-run.ts'
import type { SumpRun } from '../simulate/sump-run.ts'
import { decide } from './decide.ts'
import { isLocked, mannerOf } from './ending.ts'
import { believed, lookAt } from './look.ts'
import { pourInto } from './pour.ts'
import { misses, writeReading } from './read.ts'
import { isAway, onDuty } from './roster.ts'
import { beginsOn, markOn } from './story.ts'
import { signsOf } from './weekly.ts'

const minuteMs = 60_000

/** Rounds on Mondays before the shift, Wednesdays and Fridays during it, one on the last evening, one at the very end. */
export function planRounds(shop: ShopRun): void {
  const { days, last, calendar, agenda } = shop
  const random = shop.randomOf('rounds')
  for (let day = 0; day < last; day++) {
    const weekday = days.weekdays[day]!
    const isMissed = random.chance(isAway(last - day) ? 0.25 : 0.05) && last - day > 10
    if (calendar.open[day] !== true || ![1, 3, 5].includes(weekday) || isMissed) continue
    const startMs = timeOn(days, day, weekday === 1 ? '05:25' : '07:10') + random.between(0, 12) * minuteMs
    shop.sumps.forEach((run, i) => {
      if (run.plan.habits.readings === 'weekly' && weekday !== 1) return
      agenda.put(wholeMinute(startMs + 4 * i * minuteMs), () => visit(shop, run, startMs + 4 * i * minuteMs))
    })
  }
  planLastRounds(shop)
}

function planLastRounds(shop: ShopRun): void {
  const { days, last, agenda } = shop
  const evening = timeOn(days, last - 1, '18:50')
  shop.sumps.forEach((run, i) => {
    const ms = evening + 7 * i * minuteMs
    agenda.put(ms, () => visit(shop, run, ms, 1))
  })
  const today = ['tc1', 'tc2', 'slide3', 'mill4', 'mill5', 'mill7', 'mill8', 'central']
  today.forEach((id, i) => {
    const ms = wholeMinute(days.untilMs - (150 - 19 * i) * minuteMs)
    agenda.put(ms, () => visit(shop, sumpOf(shop, id), ms, 0))
  })
}

const wholeMinute = (ms: number) => Math.floor(ms / minuteMs) * minuteMs

/** One stop of a round: locked, down or missed, or a reading and perhaps a pour. */
function visit(shop: ShopRun, run: SumpRun, atMs: number, lastDays?: 0 | 1): void {
  const ms = wholeMinute(atMs)
  const { day, hours } = dayHourOf(shop.days, ms)
  const { id } = run.plan.document
  if (day < beginsOn(shop, id)) return
  const daysLeft = lastDays ?? shop.last - day
  const random = shop.randomOf(`visit ${id} ${ms}`)
  const by = onDuty(shop, day, hours)
  const hindrance = hindranceOf(shop, run, day, daysLeft, random)
  if (hindrance === null) {
    readAndPour(shop, run, ms, { by, daysLeft, day }, random)
  } else if (hindrance !== 'forgotten') {
    shop.journal.write({ kind: 'skip', sump: id, atMs: ms, by, fields: { reason: hindrance } })
  }
}

function hindranceOf(shop: ShopRun, { plan }: SumpRun, day: number, daysLeft: number, random: Random) {
  const { id } = plan.document
  if (isLocked(plan.ending, daysLeft)) return 'locked'
  if (standsStill(shop, id, day)) return random.chance(0.7) ? 'down' : 'forgotten'
  if (daysLeft > 18 && random.chance(isAway(daysLeft) ? 0.2 : 0.06)) return random.chance(0.4) ? 'locked' : 'forgotten'
  return null
}

/** On the last evening the hose of the central system is left running a little long. */
const aimOf = (shop: ShopRun, run: SumpRun, day: number, daysLeft: number) =>
  markOn(shop, run, day) * (run.plan.ending === 'at-mark' && daysLeft === 1 ? 1.06 : 1)

interface Visit {
  by: string
  day: number
  daysLeft: number
}

function readAndPour(shop: ShopRun, run: SumpRun, ms: number, { by, day, daysLeft }: Visit, random: Random): void {
  const look = lookAt(shop, run, ms, random)
  const recordedMs = onPaper(shop, day, ms, daysLeft, random)
  const paper = recordedMs === null ? {} : { recordedMs }
  const level = !misses(random, daysLeft, 0.05)
  writeReading(shop, run, ms, look, { by, level, pumps: !misses(random, daysLeft, 0.03), ...paper })
  lookAndSmell(shop, run, ms, { by, daysLeft, ...paper })
  const manner = mannerOf(run.plan.ending, daysLeft)
  const pour = decide(run, aimOf(shop, run, day, daysLeft), believed(run, look), manner, random)
  if (pour === null) return
  const written = !misses(random, daysLeft, 0.06)
  const isMetered = run.plan.habits.pouredBy === 'meter'
  const counted = isMetered || !misses(random, daysLeft, 0.1)
  const afterMs = ms + Math.round(random.between(3, 10)) * minuteMs
  const afterwards = recordedMs === null ? {} : { recordedMs: recordedMs + minuteMs }
  const note = manner === 'water' ? { note: 'Mixer was taken, plain water' } : {}
  shop.agenda.put(afterMs, () =>
    pourInto(shop, run, afterMs, pour, { by, written, counted, ...note, ...afterwards }, random),
  )
}

/** Whoever finds nothing says so now and then, and always on the last day. */
function lookAndSmell(
  shop: ShopRun,
  run: SumpRun,
  ms: number,
  { by, daysLeft, recordedMs }: { by: string; daysLeft: number; recordedMs?: number },
): void {
  const { id, fluid } = run.plan.document
  const random = shop.randomOf(`look ${id} ${ms}`)
  if (fluid === 'oil-22' || signsOf(run).length > 0 || !random.chance(daysLeft === 0 ? 1 : 0.35)) return
  const written = recordedMs === undefined ? {} : { recordedMs: recordedMs + 10_000 }
  shop.journal.write({ kind: 'observation', sump: id, atMs: ms, by, ...written, fields: { signs: [] } })
}

/** Some rounds are walked with paper and typed in after the shift. */
function onPaper({ days }: ShopRun, day: number, ms: number, daysLeft: number, random: Random): number | null {
  if (daysLeft <= 10 || !random.chance(0.05)) return null
  return Math.max(ms + 20 * minuteMs, timeOn(days, day, '14:20')) + Math.round(random.between(1, 30)) * minuteMs
}
