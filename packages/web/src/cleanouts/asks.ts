import type { CleanoutPlan, Job, Jobs, SideBySide, Upkeep } from '@sumpbook/book/jobs'
import { keepPreviousData, useQuery } from '@tanstack/preact-query'
import { ask } from '../api/client.ts'

export type {
  Claim,
  CleanoutPlan,
  Job,
  JobLine,
  JobStep,
  Jobs,
  PlannedStep,
  ProposedTask,
  SideBySide,
  Upkeep,
  UpkeepLine,
} from '@sumpbook/book/jobs'

/** What a query string says, fields without a text left out. */
export function queryOf(fields: Readonly<Record<string, string>>): string {
  const query = new URLSearchParams(Object.entries(fields).filter(([, text]) => text !== '')).toString()
  return query === '' ? '' : `?${query}`
}

export const useJobs = () => useQuery({ queryKey: ['jobs'], queryFn: () => ask<Jobs>('/jobs') })
export const useJob = (id: string) =>
  useQuery({ queryKey: ['jobs', id], queryFn: () => ask<Job>(`/jobs/${encodeURIComponent(id)}`) })
export const useUpkeep = () => useQuery({ queryKey: ['upkeep'], queryFn: () => ask<Upkeep>('/upkeep') })
/** The plan stays while another is worked out. */
export const useCleanoutPlan = (sump: string, fields: Readonly<Record<string, string>>) =>
  useQuery({
    queryKey: ['cleanout-plan', sump, fields],
    queryFn: () => ask<CleanoutPlan>(`/sumps/${encodeURIComponent(sump)}/cleanout-plan${queryOf(fields)}`),
    enabled: sump !== '',
    placeholderData: (previous: CleanoutPlan | undefined) => (previous?.sump === sump ? previous : undefined),
  })
export const useSideBySide = (sumps: readonly string[], fields: Readonly<Record<string, string>>) =>
  useQuery({
    queryKey: ['side-by-side', sumps, fields],
    queryFn: () =>
      ask<SideBySide>(
        `/cleanouts/side-by-side${queryOf({ sumps: sumps.map(encodeURIComponent).join(','), ...fields })}`,
      ),
    enabled: sumps.length > 0,
    placeholderData: keepPreviousData,
  })
