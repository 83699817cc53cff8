import type { Readable, Writable } from 'node:stream'

/** The world as a command sees it; tests bring their own. */
export interface World {
  env: Record<string, string | undefined>
  stdin: Readable & { isTTY?: boolean }
  stdout: Writable & { isTTY?: boolean }
  stderr: Writable & { isTTY?: boolean }
  cwd(): string
}

/** How a command ended, for scripts. */
export const exits = { done: 0, failed: 1, usage: 2, refused: 3, outOfReach: 6 } as const

/** The command line cannot be understood. */
export class UsageError extends Error {}

/** One verb: its line in the help, its options' help, and what it does. */
export interface Command {
  /** What it does, in one line. */
  summary: string
  /** How it is called and what each option means. */
  usage: string
  run(args: string[], world: World): Promise<number>
}
