import { join } from 'node:path'
import { digits, median } from './machine.ts'
import { secondsOf, serve } from './processes.ts'

/** Seconds from the start of the process to the first answer, on a book that is there already; and of the help. */
export async function benchStart(folder: string) {
  const data = join(folder, 'start')
  await (await serve(['--data', data])).stop()
  const starts: number[] = []
  for (let i = 0; i < 7; i++) {
    const served = await serve(['--data', data])
    starts.push(served.seconds)
    await served.stop()
  }
  secondsOf(['--help'])
  const helps = Array.from({ length: 15 }, () => secondsOf(['--help']))
  return {
    toFirstAnswerSeconds: digits(median(starts)),
    limitToFirstAnswerSeconds: 2,
    helpSeconds: digits(median(helps)),
    limitHelpSeconds: 0.15,
  }
}
