import type { GuidanceAnswer, ShopCalendar, SumpCalendar } from '@sumpbook/book/guidance'
import type { AnalyteSeries, SamplesAnswer } from '@sumpbook/book/samples'
import { useQuery } from '@tanstack/preact-query'
import { ask } from './client.ts'

export type {
  CalendarLine,
  Finding,
  GuidanceAnswer,
  LimitLine,
  RuleLine,
  ShopCalendar,
  SumpCalendar,
} from '@sumpbook/book/guidance'
export type { AnalyteSeries, ResultLine, SampleLine, SamplesAnswer, StrayLine } from '@sumpbook/book/samples'

/** The packs, what is chosen, and where they differ. */
export const useGuidance = () => useQuery({ queryKey: ['guidance'], queryFn: () => ask<GuidanceAnswer>('/guidance') })
/** Tests and findings of every sump. */
export const useCalendar = () => useQuery({ queryKey: ['calendar'], queryFn: () => ask<ShopCalendar>('/calendar') })
/** Tests, findings and limits of one. */
export const useSumpCalendar = (id: string) =>
  useQuery({
    queryKey: ['sumps', id, 'calendar'],
    queryFn: () => ask<SumpCalendar>(`/sumps/${encodeURIComponent(id)}/calendar`),
  })
/** Samples that wait and their results. */
export const useSamples = () => useQuery({ queryKey: ['samples'], queryFn: () => ask<SamplesAnswer>('/samples') })
/** What laboratory and strips found of a sump, series by series. */
export const useAnalytes = (id: string) =>
  useQuery({
    queryKey: ['sumps', id, 'analytes'],
    queryFn: () => ask<{ series: AnalyteSeries[] }>(`/sumps/${encodeURIComponent(id)}/analytes`),
    enabled: id !== '',
  })
