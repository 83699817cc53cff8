/** What was measured in a sump, as found. */
import { z } from 'zod'
import { brix, celsius, classOfValue, id, instant, notNegative, percent, ph } from '../values.ts'
import { entryId, ofSump } from './envelope.ts'

/** What a reading can say of a sump's fluid, each a number or a class; the order is that of the journal's sentences. */
export const measured = {
  /** °Brix as shown. */
  brix: classOfValue(brix).optional(),
  /** Percent by titration. */
  titration: classOfValue(percent).optional(),
  ph: classOfValue(ph).optional(),
  /** mg/L as CaCO3. */
  hardness: classOfValue(notNegative).optional(),
  chloride: classOfValue(notNegative).optional(),
  /** mS/cm at 25 °C. */
  conductivity: classOfValue(notNegative).optional(),
  sulfate: classOfValue(notNegative).optional(),
  /** mg/L as NO3. */
  nitrate: classOfValue(notNegative).optional(),
  /** mg/L as NO2. */
  nitrite: classOfValue(notNegative).optional(),
  temperature: classOfValue(celsius).optional(),
  /** CFU/mL. */
  bacteria: classOfValue(notNegative).optional(),
  fungi: classOfValue(notNegative).optional(),
  /** Percent. */
  trampOil: classOfValue(percent).optional(),
  dissolvedOxygen: classOfValue(notNegative).optional(),
  machineHours: classOfValue(notNegative).optional(),
  /** Millimetres on the dipstick. */
  level: classOfValue(notNegative).optional(),
  /** Litres as seen. */
  volume: classOfValue(notNegative).optional(),
}

const readingShape = {
  ...ofSump,
  kind: z.literal('reading'),
  ...measured,
  pumps: z.enum(['running', 'stopped']).optional(),
  instrument: id.optional(),
  method: z.string().optional(),
  samplePoint: z.string().optional(),
  /** A picture of what was read, by the SHA-256 of its bytes. */
  photo: z.string().optional(),
  /** A sample was taken; its result comes later. */
  pending: z.boolean().optional(),
  /** The result of the sample that this entry took. */
  answers: entryId.optional(),
  /** When a result was read, where `at` is the time of sampling. */
  readAt: instant.optional(),
  analytes: z
    .array(
      z.looseObject({
        name: z.string(),
        value: classOfValue(z.number()).optional(),
        unit: z.string().optional(),
        method: z.string().optional(),
        lab: z.string().optional(),
      }),
    )
    .optional(),
}

export const reading = z
  .looseObject(readingShape)
  .refine(({ at, readAt }) => readAt === undefined || !(Date.parse(readAt) < Date.parse(at)), {
    error: 'a time not before `at`, when the sample was taken',
    path: ['readAt'],
  })
