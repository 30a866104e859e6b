import { defineConfig, type Plugin } from 'vite';
import { themeCss } from './src/reporting/html/theme.ts';

const themeId = 'virtual:theme.css';

/** The colours of the report, so that both look alike; on paper always the light ones. */
function sharedTheme(): Plugin {
  return {
    name: 'rimelog-theme',
    resolveId: (id) => (id === themeId ? `\0${themeId}` : null),
    load: (id) => {
      if (id !== `\0${themeId}`) return null;
      const [light = ''] = themeCss().split('\n');
      return `${themeCss()}\n${light.replace(':root', ':root.printing')}`;
    },
  };
}

/** The pages of `rimelog serve`. */
export default defineConfig({
  root: 'web',
  base: '/',
  plugins: [sharedTheme()],
  build: {
    outDir: '../dist/web',
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 6000,
  },
});
