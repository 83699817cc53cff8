import { expect, test } from 'vitest'
import { delimiterOf } from './delimiter.ts'

test.each([
  ['semicolons before decimal commas', 'Datum;M1\n05.10.2026;3,4\n12.10.2026;3,5', ';'],
  ['commas', 'Date,M1,M2\n2026-10-05,3.4,\n2026-10-12,,3', ','],
  ['tabs', 'Date\tM1\tNotes\n5/10/2026\t3.4\ta, b, c', '\t'],
  ['titles above', 'Log;;\n;;\nDatum;M1;M2\n05.10.2026;3,4;3,1', ';'],
  ['quoted text does not count', 'Date,Notes\n2026-10-05,"a;b;c"\n2026-10-06,"d;e;f"', ','],
  ['a single column', 'Date\n2026-10-05', ','],
])('%s', (_, text, expected) => {
  expect(delimiterOf(text)).toBe(expected)
})
