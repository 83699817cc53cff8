import { expect, test } from 'vitest'
import { pageRule } from './page-rule.ts'

test('a page says its paper, its way up and its margin', () => {
  expect(pageRule({ paper: 'A4', margin: 0 })).toBe('@page { size: A4; margin: 0mm; }')
  expect(pageRule({ paper: 'letter', landscape: true, margin: 12 })).toBe(
    '@page { size: letter landscape; margin: 12mm; }',
  )
})

test('a shop’s name at the foot cannot end the rule it stands in', () => {
  const rule = pageRule({ paper: 'A4', margin: 12, foot: 'The "Mill" \\ 7\n} body { display: none' })
  // CSS Syntax 3, 4.3.7: a quote is \22, a backslash \5c, a line feed \a, each ended by a space.
  expect(rule).toContain('content: "The \\22 Mill\\22  \\5c  7\\a } body { display: none";')
  expect(rule).toContain('counter(page) " of " counter(pages)')
})
