import { isBeyond, plainCode, sayVolume, termProposals, wasteCodes } from '@sumpbook/fluid'
import type { Entry, SumpNow, Thing, Units } from '../api/types.ts'
import { fieldFigure, fieldVolume, readerOf } from '../say/units.ts'
import { changeOf, idFor, thingFrom } from '../shop/thing-fields.ts'
import type { WasteContainerNow } from './answers.ts'
import type { SmallField, SmallTexts, SmallValues } from './form-fields.ts'
import { SmallForm } from './small-form.tsx'
import { subjectEntry, thingEntry } from './stock-entries.ts'

export type WasteAct = 'store' | 'pickup' | 'level' | 'settings'

interface FormParts {
  units: Units
  today: string
  isBusy: boolean
  write(entries: Entry[]): void
  cancel(): void
}

interface WasteFormProps extends FormParts {
  act: WasteAct
  container: WasteContainerNow
  /** As the book keeps it; undefined where nobody set it up. */
  thing: Thing | undefined
  sumps: readonly Pick<SumpNow, 'sump' | 'name'>[]
}

const day: SmallField = { key: 'on', label: 'On', kind: 'day', required: true }
const note: SmallField = { key: 'note', label: 'Note', kind: 'text' }

/** What is written about one container. */
export function WasteForm({ act, container, thing, sumps, ...shared }: WasteFormProps) {
  const subject = { about: { kind: 'waste' as const, id: container.id }, today: shared.today }
  const reader = readerOf(shared.units)
  switch (act) {
    case 'store':
      return (
        <SmallForm
          {...shared}
          title={`Put into ${container.name}`}
          submitWords="Put in"
          first={{ on: shared.today, from: '' }}
          fields={[
            { key: 'litres', label: 'Put in', kind: 'volume', required: true },
            {
              key: 'from',
              label: 'From',
              kind: 'choice',
              choices: [['', 'not said'], ...sumps.map(({ sump, name }) => [sump, name] as const)],
            },
            day,
            note,
          ]}
          doubt={({ numbers }) =>
            container.capacity !== null && container.litres + (numbers.litres ?? 0) > container.capacity
              ? `${container.name} holds ${sayVolume(container.capacity, reader)}, and the book has ${sayVolume(container.litres, reader)} in it already.`
              : null
          }
          build={(values, stamp) => [
            subjectEntry(
              'stored',
              subject,
              { stream: container.stream, litres: values.numbers.litres, from: values.texts.from },
              values,
              stamp,
            ),
          ]}
        />
      )
    case 'pickup':
      return <PickupForm {...shared} container={container} subject={subject} />
    case 'level':
      return (
        <SmallForm
          {...shared}
          title={`Level of ${container.name}`}
          submitWords="Write it down"
          first={{ on: shared.today }}
          fields={[{ key: 'litres', label: 'It holds now', kind: 'volume', least: 0, required: true }, day, note]}
          build={(values, stamp) => [subjectEntry('check', subject, { found: values.numbers.litres }, values, stamp)]}
        />
      )
    case 'settings':
      return <ContainerForm {...shared} container={container} thing={thing} />
  }
}

function PickupForm({
  container,
  subject,
  ...shared
}: FormParts & { container: WasteContainerNow; subject: Parameters<typeof subjectEntry>[1] }) {
  const reader = readerOf(shared.units)
  const { litres: had, capacity, name, stream, code } = container
  return (
    <SmallForm
      {...shared}
      title={`Fetched from ${name}`}
      submitWords="Fetched"
      first={{ litres: had > 0 ? fieldVolume(had, shared.units) : '', on: shared.today, code: code ?? '' }}
      fields={[
        { key: 'litres', label: 'Fetched', kind: 'volume', hint: 'By the paper' },
        { key: 'kilograms', label: 'Or weighed, kg', kind: 'number', hint: 'The carrier’s scales' },
        { key: 'document', label: 'Document number', kind: 'text', hint: 'Empty: it comes later' },
        { key: 'code', label: 'Code', kind: 'text', list: wasteCodes.map((one) => one.code) },
        day,
        note,
      ]}
      fault={({ numbers }) =>
        numbers.litres === null && numbers.kilograms === null ? 'Found nothing; expected litres or kilograms.' : null
      }
      doubt={({ numbers }) =>
        numbers.litres != null && isBeyond(numbers.litres, { had, capacity })
          ? `The book has ${sayVolume(had, reader)} in ${name}${capacity === null ? '' : `, which holds ${sayVolume(capacity, reader)}`}. The amount on the paper counts; what is not explained is told.`
          : null
      }
      build={(values, stamp) => [
        subjectEntry(
          'pickup',
          subject,
          {
            stream,
            code: values.texts.code == null ? null : plainCode(values.texts.code),
            litres: values.numbers.litres,
            kilograms: values.numbers.kilograms,
            document: values.texts.document,
          },
          values,
          stamp,
        ),
      ]}
    />
  )
}

/** The number of a carrier's document that came after the pickup. */
export function DocumentForm({ container, pickup, ...shared }: FormParts & { container: string; pickup: string }) {
  const subject = { about: { kind: 'waste' as const, id: container }, today: shared.today }
  return (
    <SmallForm
      {...shared}
      title="The number of its document"
      submitWords="Write it down"
      fields={[{ key: 'document', label: 'Document number', kind: 'text', required: true }]}
      build={(values, stamp) => [
        subjectEntry('check', subject, { document: values.texts.document, answers: pickup }, values, stamp),
      ]}
    />
  )
}

const own = 'own'
const proposals = termProposals.map(
  ({ count, unit, source, words }, n) => [String(n), `${count} ${unit}: ${source} (${words})`] as const,
)

const containerFields: SmallField[] = [
  { key: 'name', label: 'Name', kind: 'text', required: true },
  { key: 'stream', label: 'What is in it', kind: 'text', hint: 'As the shop calls it: Used emulsion' },
  {
    key: 'kind',
    label: 'Held against',
    kind: 'choice',
    choices: [
      ['emulsion', 'draw-offs and cleanouts (emulsion)'],
      ['rinse', 'draw-offs and cleanouts (rinse water)'],
      ['oil', 'skims (oil)'],
      ['sludge', 'nothing (sludge)'],
      ['other', 'nothing (other)'],
    ],
  },
  {
    key: 'code',
    label: 'Code',
    kind: 'text',
    list: wasteCodes.map(({ code }) => code),
    hint: 'As your carrier or authority says it; none follows from the fluid',
  },
  { key: 'capacity', label: 'It holds', kind: 'volume' },
  { key: 'density', label: 'Kilograms a litre', kind: 'number', hint: 'Where the carrier weighs' },
  {
    key: 'proposal',
    label: 'It may wait',
    kind: 'choice',
    choices: [['', 'no term is set'], ...proposals, [own, 'another term']],
    hint: 'Proposals stand here from memory; your permit, your authority and your carrier say which term holds',
  },
  { key: 'count', label: 'So many', kind: 'number', least: 1, most: 10_000, whole: true },
  {
    key: 'unit',
    label: 'Days, months or years',
    kind: 'choice',
    choices: [
      ['days', 'days'],
      ['months', 'months'],
      ['years', 'years'],
    ],
  },
  { key: 'source', label: 'By what', kind: 'text', hint: 'Law, permit or contract' },
  {
    key: 'from',
    label: 'It runs from',
    kind: 'choice',
    choices: [
      ['first', 'the first drop'],
      ['full', 'the day it is full'],
    ],
  },
  { key: 'place', label: 'Where it stands', kind: 'text' },
]

/** A container, new or changed. */
export function ContainerForm({
  container,
  thing,
  taken,
  ...shared
}: FormParts & { container?: WasteContainerNow; thing?: Thing | undefined; taken?: ReadonlySet<string> }) {
  return (
    <SmallForm
      {...shared}
      title={container === undefined ? 'A waste container' : `Settings of ${container.name}`}
      submitWords="Save"
      fields={containerFields}
      first={textsOf(thing, container, shared.units)}
      follow={followProposal}
      fault={({ numbers, texts }) =>
        texts.proposal != null && numbers.count == null
          ? 'Found no length of the term; expected so many days, months or years.'
          : null
      }
      write={(entries) => (entries.length === 0 ? shared.cancel() : shared.write(entries))}
      build={(values, stamp) => {
        const told = toldOf(values)
        if (thing !== undefined) {
          const change = changeOf(thing, told)
          return change === null ? [] : [thingEntry({ kind: 'waste', id: thing.id }, change.changes, change.was, stamp)]
        }
        const id = container?.id ?? idFor(String(told.name), taken ?? new Set(), 'waste')
        return [thingEntry({ kind: 'waste', id }, thingFrom(told), null, stamp)]
      }}
    />
  )
}

/** A proposal that is chosen fills the fields of the term; none empties them. */
export function followProposal(texts: SmallTexts, key: string): SmallTexts {
  if (key === 'count' || key === 'unit' || key === 'source') return { ...texts, proposal: own }
  if (key !== 'proposal' || texts.proposal === own) return texts
  const chosen = termProposals[Number(texts.proposal)]
  if (texts.proposal === '' || chosen === undefined) return { ...texts, count: '', source: '' }
  return { ...texts, count: String(chosen.count), unit: chosen.unit, source: chosen.source }
}

/** The values of a container by path, null where a field is empty. */
export function toldOf({ numbers, texts }: SmallValues): Record<string, unknown> {
  const hasTerm = texts.proposal != null && numbers.count != null
  return {
    name: texts.name ?? null,
    stream: texts.stream ?? null,
    kind: texts.kind ?? null,
    code: texts.code == null ? null : plainCode(texts.code),
    capacity: numbers.capacity ?? null,
    density: numbers.density ?? null,
    term: hasTerm
      ? {
          count: numbers.count,
          unit: texts.unit ?? 'days',
          ...(texts.source == null ? {} : { source: texts.source }),
          from: texts.from ?? 'first',
        }
      : null,
    place: texts.place ?? null,
  }
}

function textsOf(thing: Thing | undefined, container: WasteContainerNow | undefined, units: Units): SmallTexts {
  const term = thing?.term as { count: number; unit: string; source?: string; from?: string } | undefined
  const words = (value: unknown) => (typeof value === 'string' ? value : '')
  return {
    name: words(thing?.name) || (container?.name ?? ''),
    stream: words(thing?.stream) || (container?.stream ?? ''),
    kind: words(thing?.kind) || 'emulsion',
    code: words(thing?.code),
    capacity: typeof thing?.capacity === 'number' ? fieldVolume(thing.capacity, units) : '',
    density: typeof thing?.density === 'number' ? fieldFigure(thing.density) : '',
    proposal: term === undefined ? '' : own,
    count: term === undefined ? '' : String(term.count),
    unit: term?.unit ?? 'days',
    source: term?.source ?? '',
    from: term?.from ?? 'first',
    place: words(thing?.place),
  }
}
