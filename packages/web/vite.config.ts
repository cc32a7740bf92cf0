import { fileURLToPath } from 'node:url'
import react from '@vitejs/plugin-react'
import { defineConfig, type Plugin } from 'vite'

// The page is made from the sources of the pure packages, so that an edit shows without building them.
const packages = fileURLToPath(new URL('..', import.meta.url))

/** Names of all built files, for the script that keeps the page on the device. */
const offlineFiles: Plugin = {
  name: 'offline-files',
  generateBundle(_options, bundle) {
    const names = Object.keys(bundle).filter(name => name.startsWith('assets/'))
    const source = JSON.stringify(names.map(name => `/${name}`).sort())
    this.emitFile({ type: 'asset', fileName: 'offline-files.json', source })
  },
}

/** The pure packages do nothing by being loaded: what a page or worker does not use of them stays out of it. */
const treeshake = {
  moduleSideEffects: (name: string) => !/\/packages\/(core|document|drawing|formats)\/src\//.test(name),
}

export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  plugins: [react(), offlineFiles],
  resolve: {
    alias: [
      {
        find: /^@dawnlift\/(core|document|drawing|formats)\/(.+)$/,
        replacement: `${packages}$1/src/$2/index.ts`,
      },
    ],
  },
  worker: { format: 'es', rolldownOptions: { treeshake } },
  build: {
    outDir: 'site',
    emptyOutDir: true,
    target: 'es2022',
    chunkSizeWarningLimit: 900,
    rolldownOptions: { treeshake },
  },
  server: { proxy: { '/api': 'http://127.0.0.1:8140' } },
})
