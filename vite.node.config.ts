import { chmodSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { defineConfig, type Plugin } from 'vite';

const { version } = JSON.parse(readFileSync(new URL('package.json', import.meta.url), 'utf8')) as {
  version: string;
};

/**
 * One letter beyond Latin 1 doubles what a whole file takes in memory as source: they stand in literals alone and are
 * escaped there.
 */
function plainLetters(code: string): string {
  return code.replace(/[^\0-\x7f]/g, (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`);
}

/** Makes the command runnable, and clears what an older build left; dist/ also holds the pages. */
const finish: Plugin = {
  name: 'finish',
  writeBundle({ dir = 'dist' }, bundle) {
    for (const name of Object.keys(bundle)) {
      const file = `${dir}/${name}`;
      if (name.endsWith('.js')) writeFileSync(file, plainLetters(readFileSync(file, 'utf8')));
    }
    chmodSync(`${dir}/rimelog.js`, 0o755);
    for (const name of readdirSync(`${dir}/chunks`)) {
      if (!(`chunks/${name}` in bundle)) rmSync(`${dir}/chunks/${name}`);
    }
  },
};

/** What prints tables, and what that loads. */
const ofTables = [
  'cli-table3',
  'table',
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
