import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { digits, median } from './machine.ts'
import { serve, startServer } from './processes.ts'
import { perSecond, reading } from './put-load.ts'

const singles = 4000
const batches = 60
const entriesABatch = 500
const bare = fileURLToPath(new URL('bare-route.ts', import.meta.url))

/**
 * Durable entries a second: single PUTs over one connection and over 32, beside a bare Fastify route with one durable
 * insert, in turn and three times each; and batches of 500.
 */
export async function benchPut(folder: string) {
  const ours = await serve(['--data', join(folder, 'put')])
  const peer = await startServer([bare, join(folder, 'bare.sqlite')])
  let run = 0
  const pair = async (connections: number) => {
    run++
    return {
      ours: await perSecond(singlesOf(ours.address, run), connections),
      bare: await perSecond(singlesOf(peer.address, run), connections),
    }
  }
  const single = async (connections: number) => {
    await pair(connections)
    const rounds = [await pair(connections), await pair(connections), await pair(connections)]
    return {
      perSecond: digits(median(rounds.map((round) => round.ours))),
      barePerSecond: digits(median(rounds.map((round) => round.bare))),
      ratio: digits(median(rounds.map((round) => round.ours / round.bare))),
      limitRatio: 0.5,
    }
  }
  try {
    const overOne = await single(1)
    const over32 = await single(32)
    const batched: number[] = []
    for (let n = 0; n < 3; n++) batched.push(entriesABatch * (await perSecond(batchesOf(ours.address, ++run), 2)))
    return {
      overOneConnection: overOne,
      over32Connections: over32,
      batchedEntriesPerSecond: digits(median(batched)),
      limitBatchedEntriesPerSecond: 5000,
    }
  } finally {
    await ours.stop()
    await peer.stop()
  }
}

const singlesOf = (address: string, run: number) =>
  Array.from({ length: singles }, (_, n) => {
    const entry = reading(n, run)
    return { url: `${address}/api/v1/entries/${entry.id}`, body: JSON.stringify(entry) }
  })

const batchesOf = (address: string, run: number) =>
  Array.from({ length: batches }, (_, batch) => {
    const entries = Array.from({ length: entriesABatch }, (_, n) => reading(batch * entriesABatch + n, run))
    return { url: `${address}/api/v1/entries`, body: JSON.stringify({ entries }) }
  })
