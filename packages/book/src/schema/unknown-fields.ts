import type { z } from 'zod'
import { pointerOf } from './faults.ts'

/** Pointers of the fields a schema does not name: they are kept and given back, but somebody should know. */
export function unknownFields(schema: z.core.$ZodType, value: unknown, path: PropertyKey[] = []): string[] {
  const { def } = schema._zod as unknown as { def: Def }
  switch (def.type) {
    case 'object':
      return isRecord(value) ? unknownOfObject(def.shape!, value, path) : []
    case 'array':
      return Array.isArray(value) ? value.flatMap((item, i) => unknownFields(def.element!, item, [...path, i])) : []
    case 'optional':
      return value === undefined ? [] : unknownFields(def.innerType!, value, path)
    case 'union':
      return isRecord(value) ? unknownOfUnion(def, value, path) : []
    default:
      return []
  }
}

interface Def {
  type: string
  shape?: Record<string, z.core.$ZodType>
  element?: z.core.$ZodType
  innerType?: z.core.$ZodType
  options?: z.core.$ZodType[]
  discriminator?: string
}

function unknownOfObject(shape: Record<string, z.core.$ZodType>, value: Record<string, unknown>, path: PropertyKey[]) {
  return Object.entries(value).flatMap(([key, inner]) => {
    // A field may be called `constructor`: only the schema's own count.
    const known = Object.hasOwn(shape, key) ? shape[key] : undefined
    return known === undefined ? [pointerOf([...path, key])] : unknownFields(known, inner, [...path, key])
  })
}

function unknownOfUnion({ options = [], discriminator }: Def, value: Record<string, unknown>, path: PropertyKey[]) {
  if (discriminator === undefined) return []
  const fitting = options.find((option) => {
    const { shape } = (option._zod as unknown as { def: Def }).def
    const tag = shape?.[discriminator]
    return tag?._zod.values?.has(value[discriminator] as never) === true
  })
  return fitting === undefined ? [] : unknownFields(fitting, value, path)
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
