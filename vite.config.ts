import { defineConfig } from 'vite';

/** The pages of `rimelog serve`. */
export default defineConfig({
  root: 'web',
  base: '/',
  build: { outDir: '../dist/web', emptyOutDir: true, target: 'es2022', chunkSizeWarningLimit: 6000 },
});
