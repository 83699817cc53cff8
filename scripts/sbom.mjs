// `node scripts/sbom.mjs FILE`: the list of all that a release runs on, as CycloneDX JSON by `npm sbom`. It names packages, versions, licences and
// checksums, and no address that a package was fetched from: those are the releaser's own and say nothing of what is in them.
import { spawnSync } from 'node:child_process'
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import process from 'node:process'
import { fileURLToPath } from 'node:url'

const root = join(fileURLToPath(import.meta.url), '..', '..')

/** The list without where things were fetched from. */
export function withoutSources(bom) {
  const components = bom.components.map(({ externalReferences = [], ...component }) => ({
    ...component,
    externalReferences: externalReferences.filter(({ type }) => type !== 'distribution'),
  }))
  return { ...bom, components }
}

/** What a release must not say: addresses and paths of the machine it was made on, in words. */
export function tellTales(bom) {
  const said = []
  const look = (value, at) => {
    if (typeof value === 'string') {
      const isAddress = /^(https?|git\+https?):\/\/(localhost|127\.|10\.|192\.168\.|[^/]*registry)/i.test(value)
      if (isAddress || value.startsWith(root) || /^(\/(home|root|tmp|work)\/|[A-Z]:\\)/.test(value))
        said.push(`${at}: ${value}`)
    } else if (typeof value === 'object' && value !== null) {
      for (const [key, inner] of Object.entries(value)) look(inner, `${at}/${key}`)
    }
  }
  look(bom, '')
  return said
}

/**
 * The list of what a release runs on. Asked to leave out what is for development, npm leaves out packages too that both need; so it is asked for
 * all, and those go that the lock file has for development, or for development and as some package's optional companion.
 *
 * @throws {Error} npm's own words where it fails
 */
export function billOfMaterials() {
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm'
  const { status, stdout, stderr } = spawnSync(npm, ['sbom', '--sbom-format', 'cyclonedx', '--package-lock-only'], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
    shell: process.platform === 'win32',
  })
  if (status !== 0) throw new Error(`npm sbom failed: ${stderr}`)
  return forRunning(
    withoutSources(JSON.parse(stdout)),
    JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')),
  )
}

/** The list without what is not there when only what a release needs is installed. */
export function forRunning(bom, { packages }) {
  const needed = new Set(
    Object.entries(packages)
      .filter(
        ([path, { dev, devOptional, link }]) => path !== '' && dev !== true && devOptional !== true && link !== true,
      )
      .map(
        ([path, { name, version }]) =>
          `${name ?? path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length)}@${version}`,
      ),
  )
  const components = bom.components.filter((component) => needed.has(component['bom-ref']))
  const kept = new Set(components.map((component) => component['bom-ref']))
  const dependencies = (bom.dependencies ?? [])
    .filter(({ ref }) => kept.has(ref) || ref === bom.metadata?.component?.['bom-ref'])
    .map(({ ref, dependsOn = [] }) => ({ ref, dependsOn: dependsOn.filter((one) => kept.has(one)) }))
  return { ...bom, components, dependencies }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [, , file] = process.argv
  if (file === undefined) {
    process.stderr.write('node scripts/sbom.mjs FILE\n')
    process.exit(2)
  }
  const bom = billOfMaterials()
  const said = tellTales(bom)
  if (said.length > 0) {
    process.stderr.write(`The list tells of the machine it was made on; nothing was written:\n${said.join('\n')}\n`)
    process.exit(1)
  }
  writeFileSync(file, `${JSON.stringify(bom, null, 2)}\n`)
  process.stdout.write(`${bom.components.length} packages in ${file}\n`)
}
