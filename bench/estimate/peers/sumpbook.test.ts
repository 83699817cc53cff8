import { expect, test } from 'vitest'
import { estimateFile } from '../../../packages/book/src/index.ts'
import { simulateOtherShop } from '../other-shop/other-shop.ts'
import { simulateShop } from '../simulate/shop.ts'
import { estimatesOf } from './command-line.ts'
import { sumpbook } from './sumpbook.ts'

test.each([
  ['first', simulateShop],
  ['second', simulateOtherShop],
])(
  'a fold that goes on says what the book file says afresh, at every instant, in the %s world',
  async (_, simulate) => {
    const shop = simulate({ seed: 5, shop: 1, sumps: 4 })
    const text = JSON.stringify(shop.book)
    const aheadDays = [7, 14]
    // Before and after the days of adoption, the same day twice, and an earlier one again.
    for (const [day, hour] of [
      [20, 9],
      [61, 13],
      [61, 14],
      [130, 5],
      [40, 12],
    ] as const) {
      const question = { atMs: shop.instant(day, hour), aheadDays }
      const afresh = await estimateFile(text, { at: new Date(question.atMs).toISOString(), ahead: aheadDays })
      expect(await sumpbook.estimate(shop.book, question)).toEqual(estimatesOf(afresh, question))
    }
  },
)
