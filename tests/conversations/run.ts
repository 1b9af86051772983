/**
 * `npm run conversation FILE`: replays a transcript and shows where it goes otherwise.
 * With `--fill` it prints the transcript with the answers as they are now, to be read and corrected.
 */
import { readFileSync } from 'node:fs';
import { changesOf, replay } from './replay.js';
import { answersAs, readTalk } from './script.js';

const main = async (): Promise<void> => {
  const files = process.argv.slice(2).filter((arg) => !arg.startsWith('--'));
  const fill = process.argv.includes('--fill');
  if (files.length === 0) {
    console.error('Say which transcript: npm run conversation tests/conversations/talks/NAME.talk');
    process.exitCode = 2;
    return;
  }
  for (const file of files) {
    const text = readFileSync(file, 'utf8');
    const replies = await replay(readTalk(text));
    if (fill) {
      const byLine = new Map(replies.map(({ turn, reply }) => [turn.line, reply]));
      for (const [index, line] of text.trimEnd().split('\n').entries()) {
        if (/^\s*[<=]/.test(line)) continue;
        console.log(line);
        const reply = byLine.get(index + 1);
        if (!reply) continue;
        console.log(`< ${reply.speech.text}`);
        for (const change of changesOf(reply)) console.log(`= ${change}`);
      }
      continue;
    }
    for (const { turn, reply } of replies) {
      const right = turn.expected.length === 0 || answersAs(turn.expected, reply.speech.text);
      console.log(`> ${turn.said}\n< ${reply.speech.text}`);
      if (right) continue;
      console.log(`  line ${turn.line} expected: ${turn.expected.join(' ')}`);
      process.exitCode = 1;
    }
  }
};

await main();
