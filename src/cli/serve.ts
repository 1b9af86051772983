/** `tellshelf serve`: the HTTP and WebSocket service. Settings are in `src/server/config.ts`. */
import type { Command } from 'commander';
import { whereabouts } from './with-store.js';

export const addServeCommand = (program: Command): void => {
  whereabouts(program.command('serve'), false)
    .description('Run the service. With nothing in the store yet, it serves a demo kitchen.')
    .option('--demo', 'make the demo kitchen if it is not there, and print a key for it')
    .action(async ({ demo, data }: { demo?: true; data: string }) => {
      const { serve } = await import('./serve/serve.js');
      await serve({ demo: demo === true, data });
    });
};
