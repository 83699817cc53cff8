import type { summarise } from './measure.ts'

type Result = ReturnType<typeof summarise>

/** What an estimator is to reach, with what it reached. */
export interface Limit {
  what: string
  from: number
  to: number
  found: number
  met: boolean
}

/**
 * Errors of a peer over those of another: trimmed RMSE of the concentration, medians of the rest. Below 1 it is nearer to the truth.
 */
export function ratiosOf({ figures: ours }: Result, { figures: theirs, name: beside }: Result) {
  const rmse = (name: string) => digits(ours[name]!.trimmedRmse / theirs[name]!.trimmedRmse)
  const median = (name: string) => digits(ours[name]!.medianErrorPercent / theirs[name]!.medianErrorPercent)
  return {
    beside,
    now: rmse('concentration'),
    in7: rmse('concentration+7'),
    in14: rmse('concentration+14'),
    medianNow: median('concentration'),
    medianIn7: median('concentration+7'),
    volume: median('volume'),
    hardness: median('hardness'),
    evaporation: median('evaporation'),
    carryOff: median('carryOff'),
  }
}

/** What is promised of an estimator beside a plain filter and the last reading, in one world. */
export function limitsOf(ours: Result, plain: Result, last: Result): Limit[] {
  const [overPlain, overLast] = [ratiosOf(ours, plain), ratiosOf(ours, last)]
  const { figures, doubts } = ours
  const upTo = (what: string, to: number, found: number) => limit(what, { from: 0, to }, found)
  const covers = (name: string, from: number, to: number) =>
    limit(`90 % intervals of ${name} hold`, { from, to }, figures[name]!.coverage)
  const found = (what: string, { found, of }: { found: number; of: number }, from: number) =>
    limit(`${what} found`, { from, to: 1 }, digits(found / of))
  const ahead = [7, 14].flatMap((days) =>
    ['concentration', 'volume', 'hardness'].map((name) => covers(`${name}+${days}`, 0.85, 0.97)),
  )
  return [
    upTo('concentration now, over the plain filter', 0.95, overPlain.now),
    upTo('concentration in 7 days, over the plain filter', 0.9, overPlain.in7),
    upTo('evaporation, median error over the plain filter', 1, overPlain.evaporation),
    upTo('hardness, median error over the plain filter', 1, overPlain.hardness),
    upTo('carry-off, median error over the plain filter', 0.95, overPlain.carryOff),
    upTo('concentration now, over the last reading', 0.5, overLast.now),
    upTo('concentration in 7 days, over the last reading', 0.55, overLast.in7),
    covers('concentration', 0.87, 0.95),
    ...['volume', 'hardness', 'evaporation', 'carryOff'].map((name) => covers(name, 0.85, 0.97)),
    ...ahead,
    found('misreads', doubts.misreads, 0.85),
    found('missing records', doubts.missing, 0.6),
    upTo('false doubts a sump and half year', 0.3, doubts.falseASumpAndHalfYear),
  ]
}

const limit = (what: string, { from, to }: { from: number; to: number }, found: number): Limit => ({
  what,
  from,
  to,
  found,
  met: found >= from && found <= to,
})

export function sayLimits(limits: readonly Limit[]): string {
  const width = Math.max(...limits.map(({ what }) => what.length))
  const lines = limits.map(({ what, from, to, found, met }) => {
    const wanted = from === 0 ? `at most ${to}` : to === 1 ? `at least ${from}` : `${from} to ${to}`
    return `${met ? 'met    ' : 'NOT MET'}  ${what.padEnd(width)}  ${String(found).padStart(6)}  (${wanted})\n`
  })
  return lines.join('')
}

const digits = (value: number): number => Number(value.toPrecision(3))
