import { defineConfig } from 'vite'
import { ahead } from './build/ahead.ts'
import { besidePage } from './build/beside-page.ts'
import { contentPolicy } from './build/content-policy.ts'
import { offline } from './build/offline.ts'

export default defineConfig({
  // Relative, so that the built folder works under any path of any host.
  base: './',
  plugins: [besidePage(), contentPolicy(), ahead(), offline()],
  build: {
    outDir: '../.build/page',
    emptyOutDir: true,
    target: 'es2022',
    modulePreload: { polyfill: false },
    // Small files too must stay files: the content policy admits no data: scripts.
    assetsInlineLimit: 0,
  },
  worker: { format: 'es' },
})
