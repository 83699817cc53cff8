import { say, sayMonth } from '@sumpbook/fluid'
import { SelectField } from '../fields/fields.tsx'
import { monthsUpTo } from './months.ts'

/** Which month is looked at. */
export function MonthPicker({ month, today, pick }: { month: string; today: string; pick(month: string): void }) {
  const months = monthsUpTo(today)
  const older = months[months.indexOf(month) + 1]
  const younger = months[months.indexOf(month) - 1]
  return (
    <div class="month-picker no-print">
      <SelectField
        label={say('Month')}
        value={month}
        onInput={pick}
        choices={months.map((one) => [one, sayMonth(one)] as const)}
      />
      <button type="button" disabled={older === undefined} onClick={() => older !== undefined && pick(older)}>
        {say('Earlier')}
      </button>
      <button type="button" disabled={younger === undefined} onClick={() => younger !== undefined && pick(younger)}>
        {say('Later')}
      </button>
    </div>
  )
}
