import { expect, test } from 'vitest'
import { isLoopback, readLabelAddress } from './label-address.ts'

test.each([
  ['https://coolant.example/', 'https://coolant.example'],
  [' 192.168.0.9:7340 ', 'http://192.168.0.9:7340'],
  ['book.shop.lan', 'http://book.shop.lan'],
  ['HTTP://Book.Shop.Lan:80', 'http://book.shop.lan'],
])('%o leads to %s', (text, origin) => {
  expect(readLabelAddress(text)).toEqual({ origin })
})

test.each([
  '',
  'ftp://coolant.example',
  'http://coolant.example/round/mill7',
  'http://',
  'two words',
  'https://a:b@c.example',
])('%o is no address of a book', (text) => {
  expect(readLabelAddress(text)).toMatchObject({ fault: { expected: expect.stringContaining('without a page') } })
})

test('loopback is the machine itself, whichever way it is written (RFC 6761 §6.3, RFC 1122 §3.2.1.3)', () => {
  for (const origin of ['http://localhost:7340', 'http://127.0.0.1', 'http://127.1.2.3:80', 'http://[::1]:7340'])
    expect(isLoopback(origin)).toBe(true)
  for (const origin of ['http://192.168.0.9', 'https://book.shop.lan', 'https://localhost.example'])
    expect(isLoopback(origin)).toBe(false)
})
