import type { StockAnswer } from '@sumpbook/book/stock'
import type { WasteAnswer } from '@sumpbook/book/waste'
import { useQuery } from '@tanstack/preact-query'
import { ask } from '../api/client.ts'

export type { FluidStock, StockAnswer } from '@sumpbook/book/stock'
export type { PickupLine, WasteAnswer, WasteContainerNow } from '@sumpbook/book/waste'

export const useStock = () => useQuery({ queryKey: ['stock'], queryFn: () => ask<StockAnswer>('/stock') })

/** The waste of some days; of the last ninety where none are named. */
export const useWaste = (days: { from: string; to: string } | null) =>
  useQuery({
    queryKey: ['waste', days],
    queryFn: () => ask<WasteAnswer>(days === null ? '/waste' : `/waste?from=${days.from}&to=${days.to}`),
  })
