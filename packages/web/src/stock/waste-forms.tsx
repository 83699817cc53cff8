import { isBeyond, plainCode, say, sayVolume, termProposals, wasteCodes } from '@sumpbook/fluid'
import type { Entry, SumpNow, Thing, Units } from '../api/types.ts'
import { fieldFigure, fieldVolume, readerOf } from '../say/units.ts'
import { changeOf } from '../shop/change-of.ts'
import { idFor } from '../shop/id-for.ts'
import { thingFrom } from '../shop/thing-from.ts'
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

/** On which day it was, and what else there is to say. */
const lastFields = (): SmallField[] => [
  { key: 'on', label: say('On'), kind: 'day', required: true },
  { key: 'note', label: say('Note'), kind: 'text' },
]

/** What is written about one container. */
export function WasteForm({ act, container, thing, sumps, ...shared }: WasteFormProps) {
  const subject = { about: { kind: 'waste' as const, id: container.id }, today: shared.today }
  const reader = readerOf(shared.units)
  switch (act) {
    case 'store':
      return (
        <SmallForm
          {...shared}
          title={say('Put into {container}', { container: container.name })}
          submitWords={say('Put in')}
          first={{ on: shared.today, from: '' }}
          fields={[
            { key: 'litres', label: say('Put in'), kind: 'volume', required: true },
            {
              key: 'from',
              label: say('From'),
              kind: 'choice',
              choices: [['', say('not said')], ...sumps.map(({ sump, name }) => [sump, name] as const)],
            },
            ...lastFields(),
          ]}
          doubt={({ numbers }) =>
            container.capacity !== null && container.litres + (numbers.litres ?? 0) > container.capacity
              ? say('{container} holds {capacity}, and the book has {litres} in it already.', {
                  container: container.name,
                  capacity: sayVolume(container.capacity, reader),
                  litres: sayVolume(container.litres, reader),
                })
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
          title={say('Level of {container}', { container: container.name })}
          submitWords={say('Write it down')}
          first={{ on: shared.today }}
          fields={[
            { key: 'litres', label: say('It holds now'), kind: 'volume', least: 0, required: true },
            ...lastFields(),
          ]}
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
      title={say('Fetched from {container}', { container: name })}
      submitWords={say('Fetched')}
      first={{ litres: had > 0 ? fieldVolume(had, shared.units) : '', on: shared.today, code: code ?? '' }}
      fields={[
        { key: 'litres', label: say('Fetched'), kind: 'volume', hint: say('By the paper') },
        { key: 'kilograms', label: say('Or weighed, kg'), kind: 'number', hint: say('The carrier’s scales') },
        { key: 'document', label: say('Document number'), kind: 'text', hint: say('Empty: it comes later') },
        { key: 'code', label: say('Code'), kind: 'text', list: wasteCodes.map((one) => one.code) },
        ...lastFields(),
      ]}
      fault={({ numbers }) =>
        numbers.litres === null && numbers.kilograms === null
          ? say('Found nothing; expected litres or kilograms.')
          : null
      }
      doubt={({ numbers }) =>
        numbers.litres != null && isBeyond(numbers.litres, { had, capacity })
          ? sayBeyond({
              name,
              had: sayVolume(had, reader),
              capacity: capacity === null ? null : sayVolume(capacity, reader),
            })
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

const sayBeyond = ({ name, had, capacity }: { name: string; had: string; capacity: string | null }): string =>
  capacity === null
    ? say('The book has {had} in {container}. The amount on the paper counts; what is not explained is told.', {
        had,
        container: name,
      })
    : say(
        'The book has {had} in {container}, which holds {capacity}. The amount on the paper counts; what is not explained is told.',
        { had, container: name, capacity },
      )

/** The number of a carrier's document that came after the pickup. */
export function DocumentForm({ container, pickup, ...shared }: FormParts & { container: string; pickup: string }) {
  const subject = { about: { kind: 'waste' as const, id: container }, today: shared.today }
  return (
    <SmallForm
      {...shared}
      title={say('The number of its document')}
      submitWords={say('Write it down')}
      fields={[{ key: 'document', label: say('Document number'), kind: 'text', required: true }]}
      build={(values, stamp) => [
        subjectEntry('check', subject, { document: values.texts.document, answers: pickup }, values, stamp),
      ]}
    />
  )
}

const own = 'own'
const proposals = () =>
  termProposals.map(
    ({ count, unit, source, words }, n) =>
      [
        String(n),
        say(
          '{unit, select, days {{count, plural, one {# day} other {# days}}} months {{count, plural, one {# month} other {# months}}} other {{count, plural, one {# year} other {# years}}}}: {source} ({words})',
          { unit, count, source, words: say(words) },
        ),
      ] as const,
  )

const containerFields = (): SmallField[] => [
  { key: 'name', label: say('Name'), kind: 'text', required: true },
  { key: 'stream', label: say('What is in it'), kind: 'text', hint: say('As the shop calls it: Used emulsion') },
  {
    key: 'kind',
    label: say('Held against'),
    kind: 'choice',
    choices: [
      ['emulsion', say('draw-offs and cleanouts (emulsion)')],
      ['rinse', say('draw-offs and cleanouts (rinse water)')],
      ['oil', say('skims (oil)')],
      ['sludge', say('nothing (sludge)')],
      ['other', say('nothing (other)')],
    ],
  },
  {
    key: 'code',
    label: say('Code'),
    kind: 'text',
    list: wasteCodes.map(({ code }) => code),
    hint: say('As your carrier or authority says it; none follows from the fluid'),
  },
  { key: 'capacity', label: say('It holds'), kind: 'volume' },
  { key: 'density', label: say('Kilograms a litre'), kind: 'number', hint: say('Where the carrier weighs') },
  {
    key: 'proposal',
    label: say('It may wait'),
    kind: 'choice',
    choices: [['', say('no term is set')], ...proposals(), [own, say('another term')]],
    hint: say('Proposals stand here from memory; your permit, your authority and your carrier say which term holds'),
  },
  { key: 'count', label: say('So many'), kind: 'number', least: 1, most: 10_000, whole: true },
  {
    key: 'unit',
    label: say('Days, months or years'),
    kind: 'choice',
    choices: [
      ['days', say('days')],
      ['months', say('months')],
      ['years', say('years')],
    ],
  },
  { key: 'source', label: say('By what'), kind: 'text', hint: say('Law, permit or contract') },
  {
    key: 'from',
    label: say('It runs from'),
    kind: 'choice',
    choices: [
      ['first', say('the first drop')],
      ['full', say('the day it is full')],
    ],
  },
  { key: 'place', label: say('Where it stands'), kind: 'text' },
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
      title={container === undefined ? say('A waste container') : say('Settings of {name}', { name: container.name })}
      submitWords={say('Save')}
      fields={containerFields()}
      first={textsOf(thing, container, shared.units)}
      follow={followProposal}
      fault={({ numbers, texts }) =>
        texts.proposal != null && numbers.count == null
          ? say('Found no length of the term; expected so many days, months or years.')
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
