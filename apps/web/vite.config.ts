import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';

/** Style sheets load beside the first frame, whose own styles stand in the page: nothing waits before the first picture. */
function stylesAtTheEnd(): Plugin {
  return {
    name: 'styles-at-the-end',
    transformIndexHtml: {
      order: 'post',
      handler: (html) => {
        const links = html.match(/\s*<link rel="stylesheet"[^>]*>/g) ?? [];
        return links.reduce((page, link) => page.replace(link, ''), html).replace('</body>', `${links.join('')}\n  </body>`);
      },
    },
  };
}

/** The screens: one page, and the engine as a worker of its own. */
export default defineConfig({
  plugins: [react(), stylesAtTheEnd()],
  build: {
    outDir: 'dist',
    target: 'es2022',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 900,
  },
  worker: { format: 'es' },
});
