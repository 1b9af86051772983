#!/usr/bin/env node
/**
 * The command line. One `addXCommand(program)` a file in this folder; each reads its heavy
 * imports only when its command runs, so that `talk` starts fast.
 */
import { Command } from 'commander';
import { addDeviceCommands } from './devices.js';
import { addGrammarCommand } from './grammar.js';
import { addGrammarExport } from './grammar-export.js';
import { addGuidanceCommand } from './guidance.js';
import { addLabelsCommand } from './labels.js';
import { addKitchensCommand } from './kitchens.js';
import { addListenCommand } from './listen/listen.js';
import { addNoticeKeysCommand } from './notice-keys.js';
import { addServeCommand } from './serve.js';
import { addBackupCommand } from './backup.js';
import { addExportCommand } from './export.js';
import { addImportCommand } from './import.js';
import { addPrepareCommand } from './prepare.js';
import { addRestoreCommand } from './restore.js';
import { addTalkCommand } from './talk/talk.js';

// Whoever reads our output may stop early (`… | head`); that is no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit(0);
});

const program = new Command('tellshelf')
  .description('A spoken record of one kitchen, for cooks who work by touch and ear.')
  .showHelpAfterError('Say "tellshelf help" for what there is.');

// Registered here, one line a command, in the order help lists them.
addTalkCommand(program);
addServeCommand(program);
addKitchensCommand(program);
addDeviceCommands(program);
addGrammarCommand(program);
addGrammarExport(program);
addGuidanceCommand(program);
addLabelsCommand(program);
addListenCommand(program);
addNoticeKeysCommand(program);
addBackupCommand(program);
addExportCommand(program);
addImportCommand(program);
addRestoreCommand(program);
addPrepareCommand(program);

try {
  await program.parseAsync();
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
}
