import { guidancePacks } from '@sumpbook/fluid'

/** Documents whose English title is our own: of another language, or of none. */
const named = /^(?:TRGS|DGUV|Washington) /

/** What the packs of guidance say in our own words; titles as printed, numbers of sections, years, and units that are only signs stay as they are. */
export const guidanceMessages = (): string[] =>
  guidancePacks.flatMap(({ name, editions }) => [
    name,
    ...editions.flatMap((edition) => [
      edition.name,
      ...edition.rules.flatMap(({ action, says, source }) => [
        action,
        ...(named.test(source.document) ? [source.document] : []),
        ...[source.section, source.edition].filter((text) => /[a-z]{2}/.test(text)),
        ...(says.kind === 'ends' && / of /.test(says.unit) ? [says.unit] : []),
      ]),
    ]),
  ])
