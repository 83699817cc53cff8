import type { BookDocument } from './book-document.ts'
import { type ShopAsked, simulateShop } from './simulate-shop.ts'

export type { BookDocument, EntryDocument } from './book-document.ts'
export { type ShopAsked, type SimulatedShop, simulateShop } from './simulate-shop.ts'

/** The book of the example shop, as its people kept it. */
export const exampleShop = (asked: ShopAsked): BookDocument => simulateShop(asked).book
