import { expect, test } from 'vitest'
import { followProposal, toldOf } from './waste-forms.tsx'

test('a proposal that is chosen fills the term with its source, and what is typed then makes it the shop’s own', () => {
  const chosen = followProposal({ proposal: '0' }, 'proposal')
  expect(chosen).toMatchObject({ count: '90', unit: 'days', source: '40 CFR 262.17(a)' })
  expect(followProposal({ ...chosen, count: '80' }, 'count').proposal).toBe('own')
  expect(followProposal({ ...chosen, proposal: '' }, 'proposal')).toMatchObject({ count: '', source: '' })
})

test('a container keeps what was told and leaves the rest unknown; a code is written as its list writes it', () => {
  const values = {
    numbers: { capacity: 1000, density: null, count: 6 },
    texts: {
      name: 'Tank',
      kind: 'emulsion',
      code: '120109*',
      proposal: 'own',
      unit: 'months',
      source: null,
      from: 'full',
    },
    typed: {},
  }
  expect(toldOf(values)).toEqual({
    name: 'Tank',
    stream: null,
    kind: 'emulsion',
    code: '12 01 09*',
    capacity: 1000,
    density: null,
    term: { count: 6, unit: 'months', from: 'full' },
    place: null,
  })
  expect(toldOf({ ...values, texts: { ...values.texts, proposal: null } }).term).toBeNull()
})
