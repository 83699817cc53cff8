import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Doubt } from '../metrics/doubts.ts'
import type { FiguresAhead, PromptPeer, Question, SumpEstimate } from './peer.ts'

const dayMs = 86_400_000

/** The answer of `estimate --json`, as far as the bench reads it. */
export interface EstimateDocument {
  sumps: Record<
    string,
    {
      now: SumpEstimate['now']
      ahead: FiguresAhead[]
      crossing: { limit: string; likely: string } | null
      doubts: { kind: string; entry: string | null; entries?: string[]; at: string; probability: number }[]
    }
  >
}

/** Any program that is asked like `sumpbook estimate`: `BOOK --at TIME --ahead 7,14 --json` are put after its words. */
export function commandLine(name: string, command: readonly [string, ...string[]]): PromptPeer {
  return {
    name,
    estimate(book, question) {
      const folder = mkdtempSync(join(tmpdir(), 'estimate-bench-'))
      try {
        const file = join(folder, 'book.json')
        writeFileSync(file, JSON.stringify(book))
        const at = new Date(question.atMs).toISOString()
        const [program, ...words] = command
        const asked = [...words, file, '--at', at, '--ahead', question.aheadDays.join(','), '--json']
        const { status, stdout, stderr, error } = spawnSync(program, asked, { encoding: 'utf8', maxBuffer: 2 ** 28 })
        if (error !== undefined) throw error
        if (status !== 0) throw new Error(`${name} ended with ${status}: ${stderr.slice(0, 500)}`)
        return estimatesOf(JSON.parse(stdout) as EstimateDocument, question)
      } finally {
        rmSync(folder, { recursive: true, force: true })
      }
    },
  }
}

/** Takes figures, doubts and crossings of the concentration out of an answer. */
export function estimatesOf({ sumps }: EstimateDocument, { atMs }: Question): Map<string, SumpEstimate> {
  return new Map(
    Object.entries(sumps).map(([id, { now, ahead, crossing, doubts }]) => {
      const concerns = crossing?.limit.startsWith('concentration') === true
      return [
        id,
        {
          now: { ...now },
          ahead: ahead.map((figures) => ({ ...figures })),
          crossingDays: concerns ? daysUntil(crossing!.likely, atMs) : null,
          doubts: doubts.map(({ kind, entry, entries, at }): Doubt => {
            return { kind, sump: id, entry, entries: entries ?? [], atMs: Date.parse(at) }
          }),
        },
      ]
    }),
  )
}

/** A crossing is given as an instant or a day. */
function daysUntil(likely: string, atMs: number): number {
  const ms = Date.parse(likely)
  if (!Number.isFinite(ms)) throw new RangeError(`crossing "${likely}" is no time`)
  return Math.max(0, (ms - atMs) / dayMs)
}
