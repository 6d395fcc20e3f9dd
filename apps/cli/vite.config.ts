import { defineConfig } from 'vite';

/** The commands and the server in one bundle for Node; libraries stay in node_modules. */
export default defineConfig({
  build: {
    ssr: 'src/main.ts',
    outDir: 'dist',
    target: 'node20',
    minify: false,
    rollupOptions: { output: { entryFileNames: 'barwright.js', chunkFileNames: '[name]-[hash].js' } },
  },
  ssr: { noExternal: [/^@barwright\//] },
});
