import { join } from 'node:path';
import type { UserConfig } from 'vite';
import command from '../../vite.node.config.ts';

const config: UserConfig = command;
const child = (name: string): string => join(import.meta.dirname, `${name}.ts`);

/** Builds the programs that measure a part as the command itself is built: no loader of TypeScript runs beside them. */
export default {
  ...config,
  plugins: [],
  build: {
    ...config.build,
    outDir: 'out/bench/built',
    emptyOutDir: true,
    rollupOptions: {
      input: { 'import-child': child('import-child'), 'stages-child': child('stages-child') },
      output: { format: 'es', entryFileNames: '[name].js', chunkFileNames: 'chunks/[name]-[hash].js' },
    },
  },
} satisfies UserConfig;
