import type { Claim } from '@sumpbook/book/today'
import { useQuery } from '@tanstack/preact-query'
import { ask } from './client.ts'

/** Somebody else may claim at any time: where one stands with a recipe it is looked up again and again. */
const everyMs = 15_000

/** Who has said that they do what. */
export const useClaims = () =>
  useQuery({
    queryKey: ['claims'],
    queryFn: async () => (await ask<{ claims: Claim[] }>('/claims')).claims,
    refetchInterval: everyMs,
  })
