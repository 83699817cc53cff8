import type { SumpDose, SumpDoses } from '@sumpbook/book/dose'
import { keepPreviousData, useQuery } from '@tanstack/preact-query'
import { ask } from '../api/client.ts'

/** What one additive comes to, and whether who asks may give it. */
export type DoseLine = SumpDose & { mayGive: boolean }

/** What a sump may be given; `cause` is what somebody says is behind a falling pH. */
export const useDoses = (sump: string, cause: string) =>
  useQuery({
    queryKey: ['sumps', sump, 'dose', cause],
    queryFn: () =>
      ask<Omit<SumpDoses, 'doses'> & { doses: DoseLine[] }>(
        `/sumps/${encodeURIComponent(sump)}/dose${cause === '' ? '' : `?cause=${encodeURIComponent(cause)}`}`,
      ),
    placeholderData: keepPreviousData,
  })
