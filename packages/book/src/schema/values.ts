import { message } from '@sumpbook/fluid'
import { z } from 'zod'

/** A finite number no smaller than 0: litres, milligrams per litre, hours … */
export const notNegative = z.number().min(0)
/** Percent by volume. */
export const percent = z.number().min(0).max(100)
/** °Brix: a refractometer's scale ends at 95. */
export const brix = z.number().min(0).max(95)
/** pH, 0 to 14. */
export const ph = z.number().min(0).max(14)
/** °C of a fluid that is still a fluid. */
export const celsius = z.number().min(-20).max(150)
/** A name by which other records point here; free text without surrounding blanks. */
export const id = z
  .string()
  .min(1)
  .max(200)
  .refine((text) => text.trim() === text, { error: message('a name without blanks at its ends') })
  .refine((text) => !/\p{Cc}/u.test(text), { error: message('a name without control characters') })
/** What people read. */
export const name = z.string().min(1).max(300)
/** Free words. */
export const text = z.string().max(20_000)

/** An instant: RFC 3339 with offset, `2026-10-05T09:30:00+02:00` or `…Z`. */
export const instant = z.iso.datetime({
  offset: true,
  error: message('a time with offset, such as 2026-03-03T09:30:00+01:00'),
})
/** A calendar day in the shop's zone, `2026-10-05`. */
export const day = z.iso.date({ error: message('a day, such as 2026-03-03') })

/** What a strip or a slide says when it names a class and not a figure. */
export const classOfValue = (value: z.ZodNumber) =>
  z.union(
    [
      value,
      z
        .strictObject({ low: value, high: value })
        .refine(({ low, high }) => low < high, { error: message('low below high'), path: ['high'] }),
      z.strictObject({ below: value }),
      z.strictObject({ atLeast: value }),
    ],
    { error: 'a number, or a class: {"low": 25, "high": 50}, {"below": 1000} or {"atLeast": 10000000}' },
  )

/** A figure, or a class of figures as strips and slides give it. */
export type Value = number | { low: number; high: number } | { below: number } | { atLeast: number }

/** Pairs that rise strictly in their first number: a product chart, a dip table. */
export const risingPairs = (first: z.ZodNumber, second: z.ZodNumber) =>
  z
    .array(z.tuple([first, second]))
    .min(2)
    .refine((pairs) => pairs.every(([x], i) => i === 0 || x > pairs[i - 1]![0]), {
      error: 'pairs whose first number rises from one to the next',
    })
