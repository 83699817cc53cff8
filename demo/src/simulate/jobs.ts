import type { Random } from './random.ts'

/** What a machine makes from a day on. */
export interface Job {
  material: string
  process: string
  /** Carry-off to that of an ordinary job. */
  carryOff: number
}

const processes: Readonly<Record<string, readonly string[]>> = {
  turning: ['bar turning', 'roughing', 'finishing', 'chuck work'],
  milling: ['roughing', 'pocketing', 'finishing', 'drilling'],
}

/**
 * The job of each day. A job lasts some ten working days; from one to the next carry-off jumps, mostly a little,
 * sometimes to several times as much (bulky swarf, chips that drip): log-normal with heavy tails.
 */
export function jobsOf(open: readonly boolean[], metals: readonly string[], kind: string, random: Random): Job[] {
  let job = nextJob(metals, kind, random)
  return open.map((isOpen) => {
    if (isOpen && random.chance(0.1)) job = nextJob(metals, kind, random)
    return job
  })
}

function nextJob(metals: readonly string[], kind: string, random: Random): Job {
  const heavy = random.chance(0.15) ? 0.8 : 0.3
  return {
    material: random.pick(metals),
    process: random.pick(processes[kind] ?? processes.milling!),
    carryOff: Math.min(4, Math.max(0.3, Math.exp(random.normal(heavy)))),
  }
}
