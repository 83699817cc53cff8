import { defineConfig } from 'vitest/config'
export default defineConfig({ test: { include: ['packages/fluid/src/**/*.test.ts'] } })
