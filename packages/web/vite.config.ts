import preact from '@preact/preset-vite'
import { defineConfig } from 'vite'

/**
 * The app as static files in `dist`. Everything is a file of its own (no data: addresses, no inline scripts), so that
 * the server may send a content security policy of `default-src 'self'`.
 */
export default defineConfig({
  root: import.meta.dirname,
  plugins: [preact({ devToolsEnabled: false })],
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // A module of the computation does nothing but export: each page gets those it uses, and the solver only where waters are blended.
    rolldownOptions: {
      treeshake: {
        moduleSideEffects: (id) => !id.includes('/packages/fluid/src/') && !id.includes('/node_modules/yalps/'),
      },
    },
  },
})
