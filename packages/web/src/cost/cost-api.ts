import type { Cost, Habits, Lives } from '@sumpbook/book/cost'
import type { MonthReport } from '@sumpbook/book/report'
import { keepPreviousData, useQuery } from '@tanstack/preact-query'
import { ask } from '../api/client.ts'
import { asReadHere } from '../api/queries.ts'

export type { Cost, Habits, Lives, SumpCost } from '@sumpbook/book/cost'

/** The report with the names of those who took part. */
export type Month = MonthReport & { names: Readonly<Record<string, string>> }

const span = ({ from, to }: { from: string; to: string }) => `from=${from}&to=${to}`

export const useCost = (days: { from: string; to: string }) =>
  useQuery({
    queryKey: ['cost', days],
    queryFn: () => ask<Cost>(`/cost?${span(days)}`),
    placeholderData: keepPreviousData,
  })
export const useSumpCost = (sump: string, days: { from: string; to: string }) =>
  useQuery({
    queryKey: ['cost', sump, days],
    queryFn: () => ask<Cost>(`/cost?${span(days)}&sump=${encodeURIComponent(sump)}`),
  })
export const useHabits = (days: { from: string; to: string }) =>
  useQuery({
    queryKey: ['cost', 'habits', days],
    queryFn: () => ask<Habits>(`/cost/habits?${span(days)}`),
    placeholderData: keepPreviousData,
  })
export const useLives = () => useQuery({ queryKey: ['cost', 'life'], queryFn: () => ask<Lives>('/cost/life') })
export const useMonth = (month: string) =>
  useQuery({
    queryKey: ['month', month],
    queryFn: () => ask<Month>(`/reports/month?month=${month}`),
    select: asReadHere<Month>,
    placeholderData: keepPreviousData,
  })

/** Where a month can be had as a table. */
export const monthTableAddress = (month: string) => `/api/v1/reports/month?month=${month}&format=csv`
