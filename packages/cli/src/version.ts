import packageFile from '../package.json' with { type: 'json' }

/** The version of this Sumpbook. */
export const version = packageFile.version
