import { chmodSync, readFileSync, rmSync } from 'node:fs';
import { defineConfig, type Plugin } from 'vite';

const { version } = JSON.parse(readFileSync(new URL('package.json', import.meta.url), 'utf8')) as {
  version: string;
};

/** dist/ also holds the pages, so only what an older build of these entries left behind is cleared. */
const runnable: Plugin = {
  name: 'runnable',
  buildStart() {
    rmSync('dist/chunks', { recursive: true, force: true });
  },
  writeBundle() {
    chmodSync('dist/rimelog.js', 0o755);
  },
};

/** The command, the server and their worker threads; what only one command needs is loaded by it alone. */
export default defineConfig({
  define: { __RIMELOG_VERSION__: JSON.stringify(version) },
  plugins: [runnable],
  build: {
    ssr: true,
    target: 'node20',
    outDir: 'dist',
    emptyOutDir: false,
    minify: false,
    rollupOptions: {
      input: { rimelog: 'src/cli/main.ts', 'analysis-worker': 'server/analysis/worker.ts' },
      output: {
        format: 'es',
        entryFileNames: '[name].js',
        chunkFileNames: 'chunks/[name]-[hash].js',
        banner: ({ name, isEntry }) => (isEntry && name === 'rimelog' ? '#!/usr/bin/env node' : ''),
      },
    },
  },
});
