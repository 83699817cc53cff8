/** Time that passes only when nothing is left to do at the present: a run of days takes as long as its events. */
export interface VirtualTime {
  /** Milliseconds since the beginning. */
  now(): number
  /** Runs something later; what it returns is awaited before time goes on. */
  after(ms: number, event: () => unknown): void
  sleep(ms: number): Promise<void>
  /** Lets time pass until a time, or until nothing is left to happen. */
  runUntil(end: number): Promise<void>
}

interface Event {
  at: number
  turn: number
  run(): unknown
}

/** @param tell hears what time it is, each time before something happens */
export function virtualTime(tell: (now: number) => void): VirtualTime {
  const events: Event[] = []
  let now = 0
  let turns = 0
  const time: VirtualTime = {
    now: () => now,
    after(ms, run) {
      events.push({ at: now + ms, turn: ++turns, run })
    },
    sleep: (ms) => new Promise((resolve) => time.after(ms, resolve)),
    async runUntil(end) {
      for (;;) {
        await settled()
        const next = events.reduce<Event | null>(
          (first, one) => (first === null || isBefore(one, first) ? one : first),
          null,
        )
        if (next === null || next.at > end) break
        events.splice(events.indexOf(next), 1)
        now = next.at
        tell(now)
        await next.run()
      }
      now = Math.max(now, end)
    },
  }
  return time
}

const isBefore = (a: Event, b: Event) => a.at < b.at || (a.at === b.at && a.turn < b.turn)

/** Whatever was about to go on has gone on, as far as it can at the present. */
const settled = () => new Promise((resolve) => setImmediate(resolve))
