import { diceOf } from './mutate.ts'
import { type FuzzedParser, type FuzzReport, hangMs } from './parser.ts'

/** By the clock, with room for a machine that is busy elsewhere. */
const waitedMs = 10 * hangMs

/** Findings beyond these are not listed. */
const findingsAtMost = 20

/**
 * Tries a parser with the cases from `from` on. A fault names its case's number: `from` it, `cases` 1 repeats it.
 *
 * @param tell called before each case, so that who watches knows where a hang is
 */
export async function fuzz(
  parser: FuzzedParser,
  { seed, from = 0, cases, tell }: { seed: number; from?: number; cases: number; tell?: (n: number) => void },
): Promise<FuzzReport> {
  const report: FuzzReport = {
    name: parser.name,
    seed,
    cases,
    taken: 0,
    refused: 0,
    slowestMs: 0,
    slowestCase: from,
    findings: [],
  }
  const found = (n: number, what: string) => {
    if (report.findings.length < findingsAtMost) report.findings.push({ n, what })
  }
  for (let n = from; n < from + cases; n++) {
    tell?.(n)
    const began = workedMs()
    try {
      report[await orHang(parser.tryOne(diceOf(seed, n)))] += 1
    } catch (error) {
      found(n, error instanceof Error ? (error.stack ?? error.message) : String(error))
    }
    const took = workedMs() - began
    if (took > report.slowestMs) [report.slowestMs, report.slowestCase] = [Math.round(took * 10) / 10, n]
    if (took > hangMs) found(n, `took ${Math.round(took)} ms`)
  }
  return report
}

/** What this thread has worked so far, milliseconds: a machine that is busy elsewhere makes no case slow. */
function workedMs(): number {
  const { user, system } = process.threadCpuUsage()
  return (user + system) / 1000
}

/** An answer that never comes is a hang too: nothing runs then, so that nothing else would find it. */
async function orHang<T>(answer: Promise<T> | T): Promise<T> {
  if (!(answer instanceof Promise)) return answer
  const never = Promise.withResolvers<never>()
  const timer = setTimeout(() => never.reject(new Error(`no answer after ${waitedMs} ms`)), waitedMs)
  try {
    return await Promise.race([answer, never.promise])
  } finally {
    clearTimeout(timer)
  }
}
