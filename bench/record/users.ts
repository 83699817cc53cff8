import { Agent, request } from 'node:http'

/** One kind of request, with how often it comes among the others. */
export interface Kind {
  name: string
  weight: number
  /** The nth request of its kind. */
  of(n: number): { method: 'GET' | 'PUT'; path: string; body?: unknown }
}

export interface Timing {
  requests: number
  p50: number
  p95: number
  p99: number
  slowest: number
}

/**
 * So many people at once, each with a connection of their own: ask, wait for the whole answer, look at it for a while, ask again.
 *
 * @returns milliseconds from asking to the last byte, by kind
 * @throws {Error} an answer that is no success
 */
export async function ask(
  address: string,
  kinds: readonly Kind[],
  { users, seconds, thinkMs }: { users: number; seconds: number; thinkMs: number },
): Promise<Record<string, Timing>> {
  const agent = new Agent({ keepAlive: true, maxSockets: users })
  const times = new Map(kinds.map(({ name }) => [name, [] as number[]]))
  const counts = new Map(kinds.map(({ name }) => [name, 0]))
  const turns = kinds.flatMap((kind) => Array.from({ length: kind.weight }, () => kind))
  const until = performance.now() + seconds * 1000
  const user = async (u: number) => {
    await pause((thinkMs * u) / users)
    // Without chance, and no two users in step.
    for (let turn = u * 7; performance.now() < until; turn += 11) {
      const kind = turns[turn % turns.length]!
      const n = counts.get(kind.name)!
      counts.set(kind.name, n + 1)
      const from = performance.now()
      await once(agent, address, kind.of(n))
      times.get(kind.name)!.push(performance.now() - from)
      await pause(thinkMs * (0.5 + ((turn * 31) % 100) / 100))
    }
  }
  await Promise.all(Array.from({ length: users }, (_, u) => user(u)))
  agent.destroy()
  return Object.fromEntries([...times].map(([name, all]) => [name, timing(all)]))
}

const pause = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms))

export function timing(all: readonly number[]): Timing {
  const sorted = all.toSorted((a, b) => a - b)
  const at = (share: number) =>
    Number((sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)] ?? NaN).toPrecision(3))
  return { requests: sorted.length, p50: at(0.5), p95: at(0.95), p99: at(0.99), slowest: at(1) }
}

/** One request, to the last byte of its answer, however long that takes. */
export function once(agent: Agent, address: string, { method, path, body }: ReturnType<Kind['of']>): Promise<void> {
  return new Promise((resolve, reject) => {
    const text = body === undefined ? null : JSON.stringify(body)
    const headers =
      text === null ? {} : { 'content-type': 'application/json', 'content-length': Buffer.byteLength(text) }
    const asking = request(`${address}${path}`, { method, agent, headers }, (answer) => {
      let said = ''
      answer.on('data', (chunk: Buffer) => {
        if (answer.statusCode! >= 300) said += chunk.toString()
      })
      answer.on('end', () => {
        if (answer.statusCode! < 300) resolve()
        else reject(new Error(`${method} ${path} answered ${answer.statusCode}: ${said}`))
      })
      answer.on('error', reject)
    })
    asking.on('error', reject)
    asking.end(text ?? undefined)
  })
}
