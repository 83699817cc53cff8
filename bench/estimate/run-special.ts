// `npx node bench/estimate/run-special.ts`: the books made by hand, what must come out of each and what came.
import { sumpbook } from './peers/sumpbook.ts'
import { contradictory } from './special/contradictory.ts'
import {
  changeOvers,
  instruments,
  type Judged,
  judgeChangeOver,
  judgeContradictory,
  judgeInstrument,
} from './special/judge.ts'

const judged: Judged[] = []
for (const given of instruments) judged.push(...(await judgeInstrument(sumpbook, given)))
for (const make of changeOvers) judged.push(...(await judgeChangeOver(sumpbook, make())))
for (const name of Object.keys(contradictory) as (keyof typeof contradictory)[]) {
  judged.push(...(await judgeContradictory(sumpbook, name)))
}
let story = ''
for (const one of judged) {
  if (one.story !== story) process.stdout.write(`\n${one.story}\n`)
  story = one.story
  const { met, what, expected, found } = one
  process.stdout.write(`  ${met ? 'met    ' : 'NOT MET'}  ${what}: ${expected}; found ${found}\n`)
}
const missed = judged.filter(({ met }) => !met).length
process.stdout.write(`\n${judged.length - missed} of ${judged.length} met\n`)
process.exitCode = missed === 0 ? 0 : 1
