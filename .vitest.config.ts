import { defineConfig, type Plugin } from 'vitest/config';
import { preparedFolder, stateOfSources } from './.cache-folder.mjs';

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
    // Grammars are compiled once for all files of tests, as they are once for all starts.
    env: { TELLSHELF_PREPARED: preparedFolder(stateOfSources()) },
    testTimeout: 30_000,
    hookTimeout: 60_000,
  },
});
