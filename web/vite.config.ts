import { join } from 'node:path'
import { defineConfig } from 'vite'
import { preact } from '@preact/preset-vite'
import { packedCopies } from './packed-plugin.ts'
import { SERVICE_WORKER_FILE, serviceWorkerShell } from './service-worker-plugin.ts'

const here = (path: string): string => join(import.meta.dirname, path)

export default defineConfig({
  root: import.meta.dirname,
  plugins: [preact(), serviceWorkerShell(here('public')), packedCopies(here('dist/app'))],
  resolve: { conditions: ['swardwright-source', 'module', 'browser', 'development|production'] },
  build: {
    outDir: 'dist/app',
    emptyOutDir: true,
    target: 'es2023',
    rolldownOptions: {
      input: { index: here('index.html'), sw: here('src/offline/service-worker.ts') },
      output: {
        entryFileNames: ({ name }) => (name === 'sw' ? SERVICE_WORKER_FILE : 'assets/[name]-[hash].js'),
        // What every visit needs comes as one file, not as a handful of small ones. The service worker has to stay in one piece of its own.
        codeSplitting: {
          groups: [{ name: 'app', tags: ['$initial'], test: (id) => !id.startsWith(here('src/offline/')) }],
        },
      },
    },
  },
  worker: { format: 'es' },
  server: {
    proxy: {
      '/api': 'http://127.0.0.1:8420',
      '/health': 'http://127.0.0.1:8420',
      '/greens': 'http://127.0.0.1:8420',
    },
  },
})
