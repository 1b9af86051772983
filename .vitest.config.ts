import { defineConfig, type Plugin } from 'vitest/config';

/** Files of words are text, as the pages' bundler has them. */
const words: Plugin = {
  name: 'words',
  transform: (code, id) => (id.endsWith('.ftl') ? `export default ${JSON.stringify(code)}` : null),
};

export default defineConfig({
  plugins: [words],
  test: {
    include: ['tests/**/*.test.ts'],
    globalSetup: ['tests/support/outside-setup.ts'],
    setupFiles: ['tests/support/seed.ts'],
    testTimeout: 30_000,
    hookTimeout: 60_000,
  },
});
