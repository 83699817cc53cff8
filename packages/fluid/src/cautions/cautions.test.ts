import { expect, test } from 'vitest'
import { type Caution, cautions, sayCautions } from './cautions.ts'

const all = Object.entries<Caution>(cautions)

test('cautions are said in the order asked, none twice', () => {
  expect(sayCautions(['skin', 'mist', 'skin'])).toEqual([cautions.skin.text, cautions.mist.text])
  expect(sayCautions([])).toEqual([])
})

test('every caution is whole sentences with a place and a source', () => {
  for (const [id, { text, where, source }] of all) {
    expect(text, id).toMatch(/^[A-Z0-9][^\n]+\.$/)
    expect(where, id).not.toBe('')
    expect(source, id).not.toBe('')
  }
})

test('one that was read names what was read, one of common practice claims no source', () => {
  const wrong = all.filter(([, { source, tag }]) => (tag === 'read' ? source.startsWith('none') : false))
  expect(wrong).toEqual([])
  const claimed = all.filter(([, { source, tag }]) => tag === 'common practice' && source !== 'none')
  expect(claimed).toEqual([])
})

test('no sentence stands under two names', () => {
  expect(new Set(all.map(([, { text }]) => text)).size).toBe(all.length)
})
