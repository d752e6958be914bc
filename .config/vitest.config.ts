import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** As the build has them. */
const fontsAsBytes = {
  name: 'fonts-as-bytes',
  enforce: 'pre' as const,
  load(file: string) {
    if (!file.endsWith('.ttf')) return undefined;
    return `import { readFileSync } from 'node:fs'; export default new Uint8Array(readFileSync(${JSON.stringify(file)}));`;
  },
};

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  plugins: [fontsAsBytes],
  test: {
    include: ['{shared,language,server,extension}/src/**/*.test.ts', 'test/**/*.test.ts'],
    exclude: ['**/node_modules/**', '**/dist/**', 'test/e2e/**'],
    setupFiles: ['test/setup/seed.ts'],
    testTimeout: 60_000,
  },
});
