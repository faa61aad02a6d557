import { defineConfig } from 'vitest/config'

/** Workspaces import each other's source, so that tests need no build. */
export default defineConfig({
  resolve: { conditions: ['swardwright-source'] },
  ssr: { resolve: { conditions: ['swardwright-source'], externalConditions: ['swardwright-source'] } },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  test: {
    include: ['{engine,journal,present,server,cli,web,bench}/src/**/*.test.{ts,tsx}', 'scripts/**/*.test.ts'],
    testTimeout: 120_000,
    maxWorkers: 2,
  },
})
