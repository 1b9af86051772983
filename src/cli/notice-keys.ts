/** `notice-keys`: keys that sign notices to devices whose page is closed, as settings to keep. */
import type { Command } from 'commander';

export const addNoticeKeysCommand = (program: Command): void => {
  program
    .command('notice-keys')
    .description(
      'Make keys for notices to devices whose page is closed (Web Push), as lines for the settings.',
    )
    .action(async () => {
      const { default: webPush } = await import('web-push');
      const { publicKey, privateKey } = webPush.generateVAPIDKeys();
      process.stdout.write(
        `NOTICE_PUBLIC_KEY=${publicKey}\nNOTICE_PRIVATE_KEY=${privateKey}\n# Whom a push service may ask when something is wrong:\nNOTICE_CONTACT=mailto:somebody@kitchen.example\n`,
      );
    });
};
