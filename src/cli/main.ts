#!/usr/bin/env node
/**
 * The command line. One `addXCommand(program)` a file in this folder; each reads its heavy
 * imports only when its command runs, so that `talk` starts fast.
 */
import { Command } from 'commander';

const program = new Command('tellshelf')
  .description('A spoken record of one kitchen, for cooks who work by touch and ear.')
  .showHelpAfterError('Say "tellshelf help" for what there is.');

// Registered here, one line a command, in the order help lists them.

await program.parseAsync();
