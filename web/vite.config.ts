import { defineConfig } from 'vite'
import { preact } from '@preact/preset-vite'

export default defineConfig({
  root: import.meta.dirname,
  plugins: [preact()],
  resolve: { conditions: ['swardwright-source', 'module', 'browser', 'development|production'] },
  build: { outDir: 'dist/app', emptyOutDir: true, target: 'es2023' },
  worker: { format: 'es' },
  server: { proxy: { '/api': 'http://127.0.0.1:8420', '/health': 'http://127.0.0.1:8420' } },
})
