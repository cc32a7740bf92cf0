import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

// Tests read the sources, not the build: a failing test names a line of the file it is about.
const sources = (name: string) => ({
  find: new RegExp(`^@dawnlift/${name}/(.+)$`),
  replacement: `${fileURLToPath(new URL(`./packages/${name}/src`, import.meta.url))}/$1/index.ts`,
})

export default defineConfig({
  resolve: { alias: ['core', 'document', 'drawing', 'formats', 'cli', 'server', 'web'].map(sources) },
  test: {
    include: ['packages/*/src/**/*.test.ts', 'packages/*/src/**/*.test.tsx', 'tests/**/*.test.ts'],
    testTimeout: 30_000,
    reporters: ['default', './scripts/closing-line.mjs'],
  },
})
