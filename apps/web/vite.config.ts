import react from '@vitejs/plugin-react';
import { createLogger, defineConfig, type Plugin } from 'vite';

/**
 * The first frame is painted before anything else is fetched, which on the machine that serves it is no time lost: styles and
 * scripts come one frame later. Where no frame is painted, as in a tab behind others, they start by the clock.
 */
function firstFrameFirst(): Plugin {
  return {
    name: 'first-frame-first',
    transformIndexHtml: {
      order: 'post',
      handler: (html) => {
        const script = /\s*<script type="module" crossorigin src="([^"]+)"><\/script>/.exec(html);
        const styles = [...html.matchAll(/\s*<link rel="stylesheet"[^>]*href="([^"]+)"[^>]*>/g)];
        if (!script) return html;
        const bare = [script[0], ...styles.map(([link]) => link)]
          .reduce((page, tag) => page.replace(tag, ''), html)
          .replace(/\s*<link rel="modulepreload"[^>]*>/g, '');
        const start = starter(
          script[1]!,
          styles.map(([, href]) => href!),
        );
        return bare.replace('</body>', () => `  <script>${start}</script>\n  </body>`);
      },
    },
  };
}

/** Written into the page; its hash is what the policy admits. The script waits for the styles, so that nothing is drawn twice. */
function starter(script: string, styles: readonly string[]): string {
  const source = `(function () {
    var begun, left = ${styles.length};
    function add(name, fields) { return document.head.appendChild(Object.assign(document.createElement(name), fields)); }
    function run() { add('script', { type: 'module', crossOrigin: '', src: '${script}' }); }
    function styled() { if (!--left) run(); }
    function begin() {
      if (begun) return;
      begun = 1;
      ${JSON.stringify(styles)}.forEach(function (href) { add('link', { rel: 'stylesheet', crossOrigin: '', href: href, onload: styled, onerror: styled }); });
      if (!left) run();
    }
    requestAnimationFrame(function () { setTimeout(begin); });
    setTimeout(begin, 250);
  })()`;
  return source.replace(/\s*\n\s*/g, '');
}

/** The screens: one page, and the engine as a worker of its own. */
/** The optimiser asks for a module of Node only where it runs there; in a browser it never does, so nobody need read of it. */
const customLogger = createLogger('warn');
const { warn } = customLogger;
customLogger.warn = (message, options) => {
  if (!/"node:module" has been externalized.*highs/.test(message)) warn(message, options);
};

export default defineConfig({
  customLogger,
  plugins: [react(), firstFrameFirst()],
  build: {
    outDir: 'dist',
    target: 'es2022',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 900,
  },
  worker: { format: 'es' },
});
