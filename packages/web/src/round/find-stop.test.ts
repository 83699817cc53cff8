import { expect, test } from 'vitest'
import { findStop, isCode, matchStops } from './find-stop.ts'

const stops = [
  { sump: 'mill7', name: 'Mill 7' },
  { sump: 'mill-17', name: 'Mill 17' },
  { sump: 'fraese-3', name: 'Fräse 3' },
  { sump: 'a/b', name: 'Saw' },
]
const found = (text: string) => findStop(text, stops)?.sump ?? null

test.each([
  ['the address on its label', 'https://coolant.example/round/mill7', 'mill7'],
  ['an address with signs that addresses escape', 'http://192.168.0.9:8090/round/a%2Fb', 'a/b'],
  ['the address of its page', 'http://localhost/sumps/mill-17?x=1', 'mill-17'],
  ['the id printed under the code', 'MILL-17', 'mill-17'],
  ['its name', 'mill 7', 'mill7'],
  ['its name without accents and spaces', 'frase3', 'fraese-3'],
  ['a part that one sump alone has', 'saw', 'a/b'],
])('a sump is found by %s', (_, text, sump) => {
  expect(found(text)).toBe(sump)
})

test.each([
  ['nothing', '  '],
  ['what several may be', 'mill'],
  ['a sump that is not there', 'https://coolant.example/round/mill8'],
  ['an address that is cut', 'http://localhost/round/%E0%A4%A'],
])('no sump is guessed from %s', (_, text) => {
  expect(found(text)).toBeNull()
})

test('what is typed narrows the list word by word', () => {
  expect(matchStops('mill 7', stops).map(({ sump }) => sump)).toEqual(['mill7', 'mill-17'])
  expect(matchStops('', stops)).toEqual([])
})

test('in a field a label’s address or a sump’s whole name is a code; a figure is not, nor is a part of a name', () => {
  expect(isCode('https://coolant.example/round/mill8', stops)).toBe(true)
  expect(isCode('mill7', stops)).toBe(true)
  expect(isCode('120', [...stops, { sump: '120', name: '120' }])).toBe(false)
  expect(isCode('17 L', stops)).toBe(false)
  expect(isCode('3.4', stops)).toBe(false)
})
