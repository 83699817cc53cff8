import { Agent, request } from 'node:http'

const at = Date.parse('2026-03-03T08:00:00Z')

/** The nth reading of a load, with an id of its own. */
export const reading = (n: number, run: number) => ({
  id: `00000000-${String(run).padStart(4, '0')}-4000-8000-${String(n).padStart(12, '0')}`,
  at: new Date(at + n * 1000).toISOString(),
  kind: 'reading',
  sump: 's1',
  brix: 4 + (n % 20) / 10,
  volume: 150 + (n % 40),
  by: 'p1',
})

/** Sends requests over `connections` at once until all are answered; answers a second. */
export async function perSecond(bodies: { url: string; body: string }[], connections: number): Promise<number> {
  const agent = new Agent({ keepAlive: true, maxSockets: connections })
  let next = 0
  const worker = async () => {
    for (let i = next++; i < bodies.length; i = next++) await send(agent, bodies[i]!)
  }
  const from = performance.now()
  await Promise.all(Array.from({ length: connections }, worker))
  const seconds = (performance.now() - from) / 1000
  agent.destroy()
  return bodies.length / seconds
}

function send(agent: Agent, { url, body }: { url: string; body: string }): Promise<void> {
  return new Promise((resolve, reject) => {
    const headers = { 'content-type': 'application/json', 'content-length': Buffer.byteLength(body) }
    const put = request(url, { method: 'PUT', agent, headers }, (answer) => {
      answer.resume()
      answer.on('end', () =>
        answer.statusCode! < 300 ? resolve() : reject(new Error(`answered ${answer.statusCode}`)),
      )
    })
    put.on('error', reject)
    put.end(body)
  })
}
