import preact from '@preact/preset-vite'
import { defineConfig } from 'vite'
import { VitePWA } from 'vite-plugin-pwa'
import { plainMessages } from './vite/plain-messages.ts'
import { wordsApart } from './vite/words-apart.ts'

const icon = (name: string, size: number, purpose: 'any' | 'maskable' = 'any') => ({
  src: `/${name}.png`,
  sizes: `${size}x${size}`,
  type: 'image/png',
  purpose,
})

/**
 * What makes the app start without a network: its own files on the device, and no answer of the API, which the app keeps itself.
 * A new version waits until the app lets it in (`src/offline/new-version.ts`).
 */
const installable = VitePWA({
  strategies: 'generateSW',
  registerType: 'prompt',
  injectRegister: false,
  manifest: {
    id: '/',
    name: 'Sumpbook',
    short_name: 'Sumpbook',
    description: 'The logbook of water-mixed coolant',
    lang: 'en',
    start_url: '/',
    scope: '/',
    display: 'standalone',
    theme_color: '#f7f4ec',
    background_color: '#f7f4ec',
    icons: [icon('icon-192', 192), icon('icon-512', 512), icon('icon-maskable-512', 512, 'maskable')],
    shortcuts: [{ name: 'Round', url: '/round' }],
  },
  workbox: {
    globPatterns: ['**/*.{html,js,css,svg,png}'],
    navigateFallback: '/index.html',
    // Addresses that the server answers itself.
    navigateFallbackDenylist: [/^\/(api|metrics|livez|readyz)(\/|$)/],
    inlineWorkboxRuntime: true,
    cleanupOutdatedCaches: true,
    clientsClaim: true,
    skipWaiting: false,
    sourcemap: false,
  },
})

/**
 * The app as static files in `dist`. Everything is a file of its own (no data: addresses, no inline scripts), so that
 * the server may send a content security policy of `default-src 'self'`.
 */
export default defineConfig({
  root: import.meta.dirname,
  plugins: [preact({ devToolsEnabled: false }), plainMessages(), wordsApart(), installable],
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // A module of the computation does nothing but export: each page gets those it uses, and the solver only where waters are blended.
    rolldownOptions: {
      // Many small files compress a tenth worse: what the first page needs is one, what several pages share another, those of what is planned and what it costs, and of how the shop is kept, two more.
      output: {
        codeSplitting: {
          groups: [
            { name: 'app', test: /\/web\/src\/main\.tsx$/, priority: 3 },
            { name: 'parts', test: /\/src\//, minShareCount: 2, priority: 2 },
            { name: 'planning', test: /\/web\/src\/(cleanouts|stock|cost)\//, priority: 1 },
            { name: 'keeping', test: /\/web\/src\/(shop|people|labels|speech|begin|sheet|round-sheet)\//, priority: 1 },
          ],
        },
      },
      treeshake: {
        moduleSideEffects: (id) => !id.includes('/packages/fluid/src/') && !id.includes('/node_modules/yalps/'),
      },
    },
  },
})
