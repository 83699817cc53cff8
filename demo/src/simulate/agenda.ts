/** What is still to happen, in order of time; of two things at one time the one put down first happens first. */
export interface Agenda {
  put(ms: number, happen: () => void): void
  /** Lets everything happen up to and including an instant, what is put down on the way included. */
  runTo(ms: number): void
}

interface Appointment {
  ms: number
  order: number
  happen: () => void
}

export function agenda(): Agenda {
  const ahead: Appointment[] = []
  let order = 0
  const isBefore = (a: Appointment, b: Appointment) => a.ms < b.ms || (a.ms === b.ms && a.order < b.order)
  const put = (ms: number, happen: () => void) => {
    const appointment = { ms, order: order++, happen }
    let at = ahead.length
    while (at > 0 && isBefore(ahead[at - 1]!, appointment)) at--
    ahead.splice(at, 0, appointment)
  }
  return {
    put,
    runTo: (ms) => {
      for (let next = ahead.at(-1); next !== undefined && next.ms <= ms; next = ahead.at(-1)) {
        ahead.pop()
        next.happen()
      }
    },
  }
}
