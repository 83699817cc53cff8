import { guidancePacks } from '@sumpbook/fluid'

/** What the packs of guidance say in our own words; titles of documents, and units that are only signs, stay as they are. */
export const guidanceMessages = (): string[] =>
  guidancePacks.flatMap(({ name, editions }) => [
    name,
    ...editions.flatMap((edition) => [
      edition.name,
      ...edition.rules.flatMap(({ action, says }) => [
        action,
        ...(says.kind === 'ends' && / of /.test(says.unit) ? [says.unit] : []),
      ]),
    ]),
  ])
