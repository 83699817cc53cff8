import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { defineConfig } from 'vitest/config'

const root = import.meta.dirname

/**
 * The doors of our own parts by the files behind them. Found through the links in node_modules, now and then one came by another path
 * than what a test asks for by its file, and every module behind it was there twice.
 */
const alias = ['packages/fluid', 'packages/book', 'packages/server', 'packages/cli', 'demo'].flatMap((folder) => {
  const { name, exports } = JSON.parse(readFileSync(join(root, folder, 'package.json'), 'utf8')) as {
    name: string
    exports: Record<string, string>
  }
  return Object.entries(exports).map(([door, file]) => ({
    find: new RegExp(`^${join(name, door)}$`),
    replacement: join(root, folder, file),
  }))
})

export default defineConfig({
  test: {
    reporters: ['default'],
    // Left to itself the runner keeps one core for others.
    maxWorkers: 2,
    projects: [
      {
        resolve: { alias },
        test: {
          name: 'unit',
          // One process for all files: half the time went into loading the same modules for each. A test that sets something puts it back.
          isolate: false,
          // A machine that does much else at once is slow, not wrong.
          testTimeout: 30_000,
          globalSetup: 'tests/postgres/once-per-run.ts',
          include: ['packages/{book,server,cli}/src/**/*.test.ts', 'demo/src/**/*.test.ts', 'tests/**/*.test.ts'],
        },
      },
      // These kill processes and watch clocks: each file has a process of its own.
      {
        resolve: { alias },
        test: {
          name: 'bench',
          testTimeout: 30_000,
          globalSetup: 'tests/postgres/once-per-run.ts',
          include: ['bench/{estimate,record,fuzz,offline}/**/*.test.ts'],
        },
      },
      // What touches nothing but its own figures needs no process of its own for each file.
      {
        resolve: { alias },
        test: { name: 'computation', isolate: false, include: ['packages/fluid/src/**/*.test.ts'] },
      },
      {
        resolve: { alias },
        test: { name: 'web', isolate: false, include: ['packages/web/{src,vite}/**/*.test.{ts,tsx}'] },
      },
      { resolve: { alias }, test: { name: 'checks', isolate: false, include: ['checks/**/*.check.ts'] } },
      {
        resolve: { alias },
        test: {
          name: 'browser',
          include: ['packages/web/browser/**/*.browser.ts'],
          globalSetup: 'packages/web/browser/once-per-run.ts',
          // A server inside a test is run as it is, by Node.
          server: { deps: { external: [/\/(packages\/(fluid|book|server)|demo)\/src\//] } },
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
    ],
  },
})
