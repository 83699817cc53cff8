import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    reporters: ['default'],
    // Left to itself the runner keeps one core for others.
    maxWorkers: 2,
    projects: [
      {
        test: {
          name: 'unit',
          // A machine that does much else at once is slow, not wrong.
          testTimeout: 30_000,
          globalSetup: 'tests/postgres/once-per-run.ts',
          include: [
            'packages/{book,server,cli}/src/**/*.test.ts',
            'demo/src/**/*.test.ts',
            'tests/**/*.test.ts',
            'bench/{estimate,record,fuzz,offline}/**/*.test.ts',
          ],
        },
      },
      // What touches nothing but its own figures needs no process of its own for each file.
      { test: { name: 'computation', isolate: false, include: ['packages/fluid/src/**/*.test.ts'] } },
      { test: { name: 'web', isolate: false, include: ['packages/web/{src,vite}/**/*.test.{ts,tsx}'] } },
      { test: { name: 'checks', isolate: false, include: ['checks/**/*.check.ts'] } },
      {
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
