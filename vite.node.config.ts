import { chmodSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { defineConfig, type Plugin } from 'vite';

const { version } = JSON.parse(readFileSync(new URL('package.json', import.meta.url), 'utf8')) as {
  version: string;
};

/** Makes the command runnable, and clears what an older build left; dist/ also holds the pages. */
const finish: Plugin = {
  name: 'finish',
  writeBundle({ dir = 'dist' }, bundle) {
    chmodSync(`${dir}/rimelog.js`, 0o755);
    for (const name of readdirSync(`${dir}/chunks`)) {
      if (!(`chunks/${name}` in bundle)) rmSync(`${dir}/chunks/${name}`);
    }
  },
};

/** What prints tables here and in danfojs-node, and what that loads: 47 files. */
const ofTables = [
  'cli-table3',
  'table',
  'ajv',
  'fast-deep-equal',
  'lodash.clonedeep',
  'lodash.truncate',
  'slice-ansi',
  'ansi-styles',
  'color-convert',
  'color-name',
  'astral-regex',
  'string-width',
  'emoji-regex',
  'is-fullwidth-code-point',
  'strip-ansi',
  'ansi-regex',
];

/** The command, the server and their worker threads; what only one command needs is loaded by it alone. */
export default defineConfig({
  define: { __RIMELOG_VERSION__: JSON.stringify(version) },
  plugins: [finish],
  // What every command loads goes into the bundle: one file is read in a tenth of the time of fifty.
  ssr: {
    noExternal: [
      'commander',
      'papaparse',
      'chardet',
      'temporal-polyfill',
      'temporal-utils',
      'simple-statistics',
      'yaml',
      'zod',
      'danfojs-node',
      ...ofTables,
    ],
  },
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
        // Names stay, for a stack trace to be read; comments and blanks would be held in memory with the code.
        minify: { compress: false, mangle: false, codegen: true },
        banner: ({ name, isEntry }) => (isEntry && name === 'rimelog' ? '#!/usr/bin/env node' : ''),
      },
    },
  },
});
