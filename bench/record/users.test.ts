import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { expect, onTestFinished, test } from 'vitest'
import { ask, timing } from './users.ts'

test('percentiles are those of the nearest rank', () => {
  const all = Array.from({ length: 100 }, (_, n) => 100 - n)
  expect(timing(all)).toEqual({ requests: 100, p50: 50, p95: 95, p99: 99, slowest: 100 })
  expect(timing([7])).toEqual({ requests: 1, p50: 7, p95: 7, p99: 7, slowest: 7 })
})

test('people ask in the proportion they were told to, and an answer that is no success ends the run', async () => {
  const asked: string[] = []
  const server = createServer(({ url = '' }, answer) => {
    asked.push(url)
    answer.writeHead(url === '/no' ? 500 : 200).end('{}')
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  onTestFinished(() => void server.close())
  const address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`
  const kind = (name: string, weight: number) => ({
    name,
    weight,
    of: () => ({ method: 'GET' as const, path: `/${name}` }),
  })
  const how = { users: 8, seconds: 0.3, thinkMs: 2 }
  const times = await ask(address, [kind('often', 3), kind('rarely', 1)], how)
  expect(times.often!.requests + times.rarely!.requests).toBe(asked.length)
  expect(times.often!.requests / times.rarely!.requests).toBeGreaterThan(2)
  expect(times.often!.requests / times.rarely!.requests).toBeLessThan(4)
  await expect(ask(address, [kind('no', 1)], how)).rejects.toThrow('GET /no answered 500')
})
