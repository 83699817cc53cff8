/** Seconds of one piece of work: by the clock, and of all processors in user and system mode. */
export interface Taken {
  seconds: number
  userSeconds: number
  systemSeconds: number
}

export async function timed<T>(work: () => T | Promise<T>): Promise<{ value: T; taken: Taken }> {
  const [from, busy] = [performance.now(), process.cpuUsage()]
  const value = await work()
  const { user, system } = process.cpuUsage(busy)
  return {
    value,
    taken: {
      seconds: rounded((performance.now() - from) / 1000),
      userSeconds: rounded(user / 1e6),
      systemSeconds: rounded(system / 1e6),
    },
  }
}

const rounded = (seconds: number) => Number(seconds.toPrecision(3))
