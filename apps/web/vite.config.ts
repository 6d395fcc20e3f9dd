import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';

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
        return bare.replace(
          '</body>',
          `  <script>${starter(
            script[1]!,
            styles.map(([, href]) => href!),
          )}</script>\n  </body>`,
        );
      },
    },
  };
}

/** Written into the page; its hash is what the policy admits. */
function starter(script: string, styles: readonly string[]): string {
  return `(function(){var begun;function begin(){if(begun)return;begun=1;var left=${styles.length};function run(){var s=document.createElement('script');s.type='module';s.crossOrigin='';s.src='${script}';document.head.append(s)}${JSON.stringify(
    styles,
  )}.forEach(function(href){var l=document.createElement('link');l.rel='stylesheet';l.crossOrigin='';l.href=href;l.onload=l.onerror=function(){if(!--left)run()};document.head.append(l)});if(!left)run()}requestAnimationFrame(function(){setTimeout(begin)});setTimeout(begin,250)})()`;
}

/** The screens: one page, and the engine as a worker of its own. */
export default defineConfig({
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
