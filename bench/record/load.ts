import { Agent, request } from 'node:http'

const at = Date.parse('2026-03-03T08:00:00Z')

const entryOf = (n: number) => ({
  id: `00000000-0000-4000-8000-${n.toString(16).padStart(12, '0')}`,
  at: new Date(at + n * 1000).toISOString(),
  kind: 'reading',
  sump: 's1',
  brix: 4 + (n % 20) / 10,
  volume: 150 + (n % 40),
})

/** What a load knows of the entries it sent. */
export interface Sent {
  /** Acknowledged: they must be in the book for ever after. */
  acknowledged: Set<string>
  /** Sent and not answered: they may be in the book or not, and may be sent again. */
  open: Map<string, ReturnType<typeof entryOf>>
  next: number
}

export const nothingSent = (): Sent => ({ acknowledged: new Set(), open: new Map(), next: 1 })

/** Sends entries over several connections, single ones and small batches, until `stopped` or the server is gone. */
export async function sendUntil(address: string, sent: Sent, stopped: () => boolean, connections = 6): Promise<void> {
  const agent = new Agent({ keepAlive: true, maxSockets: connections })
  const worker = async (kind: number) => {
    while (!stopped()) {
      const entries = Array.from({ length: kind % 3 === 2 ? 5 : 1 }, () => entryOf(sent.next++))
      if (!(await sendOnce(agent, address, sent, entries))) return
    }
  }
  await Promise.all(Array.from({ length: connections }, (_, kind) => worker(kind)))
  agent.destroy()
}

/** Sends again what was not answered, as a phone would; each must be there once then. */
export async function sendOpen(address: string, sent: Sent): Promise<boolean> {
  const agent = new Agent({ keepAlive: true, maxSockets: 1 })
  const open = [...sent.open.values()]
  let all = true
  for (let from = 0; from < open.length; from += 50) {
    all = (await sendOnce(agent, address, sent, open.slice(from, from + 50))) && all
  }
  agent.destroy()
  return all
}

/** @returns whether the server took them */
async function sendOnce(
  agent: Agent,
  address: string,
  sent: Sent,
  entries: readonly ReturnType<typeof entryOf>[],
): Promise<boolean> {
  for (const entry of entries) sent.open.set(entry.id, entry)
  const [first, ...more] = entries
  const [url, body] =
    more.length === 0 ? [`${address}/api/v1/entries/${first!.id}`, first] : [`${address}/api/v1/entries`, { entries }]
  const answer = await put(agent, url, JSON.stringify(body))
  if (answer === null || answer.status >= 500) return false
  const taken = answer.status < 300 && (more.length === 0 || allTaken(answer.text))
  if (!taken) throw new Error(`the server answered ${answer.status}: ${answer.text}`)
  for (const { id } of entries) {
    sent.open.delete(id)
    sent.acknowledged.add(id)
  }
  return true
}

const allTaken = (text: string) =>
  (JSON.parse(text) as { results: { status: string }[] }).results.every(({ status }) => /^(added|same)$/.test(status))

/** Null where the connection broke before the whole answer was here. */
function put(agent: Agent, url: string, body: string): Promise<{ status: number; text: string } | null> {
  return new Promise((resolve) => {
    const headers = { 'content-type': 'application/json', 'content-length': Buffer.byteLength(body) }
    const sending = request(url, { method: 'PUT', agent, headers }, (answer) => {
      let text = ''
      answer.on('data', (chunk: Buffer) => {
        text += chunk.toString()
      })
      answer.on('end', () => resolve({ status: answer.statusCode!, text }))
      answer.on('error', () => resolve(null))
      answer.on('close', () => resolve(null))
    })
    sending.on('error', () => resolve(null))
    sending.end(body)
  })
}
