import { saySheet } from '@sumpbook/fluid'
import type { BookParts } from '../book-parts.ts'
import type { Claimed, ClaimedPour } from './claim-types.ts'
import { jobKey, pourKey } from './claims.ts'
import { type JobQuestion, readFolded } from './read-jobs.ts'

/** Puts claims and jobs beside what Today lists. */
export interface TodayClaims {
  pours<Line extends { sump: string }>(lines: readonly Line[]): ClaimedPour<Line>[]
  duties<Line extends { key: string }>(lines: readonly Line[]): Claimed<Line>[]
}

/** Who holds what, and where work is under way. */
export async function readTodayClaims(
  parts: Pick<BookParts, 'journal' | 'things'>,
  question: JobQuestion,
): Promise<TodayClaims> {
  const { jobs, claims, shop } = await readFolded(parts, question)
  const underWay = new Map(
    jobs.flatMap(({ id, state, opened, nextStep, sheet }) =>
      state === 'open' && opened.sump !== undefined && (sheet === 'cleanout' || sheet === 'change-over')
        ? [
            [
              opened.sump,
              {
                id,
                title: saySheet(sheet, shop.things.sump.get(opened.sump)?.name ?? opened.sump),
                next: nextStep?.title ?? null,
              },
            ] as const,
          ]
        : [],
    ),
  )
  return {
    pours: (lines) =>
      lines.map((line) => {
        const job = underWay.get(line.sump) ?? null
        return {
          ...line,
          job,
          claimedBy: claims.get(pourKey(line.sump)) ?? (job && claims.get(jobKey(job.id))) ?? null,
        }
      }),
    duties: (lines) => lines.map((line) => ({ ...line, claimedBy: claims.get(line.key) ?? null })),
  }
}
