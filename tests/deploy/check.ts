/** `npm run deploy-files`, a part of `npm run check`: every file of `deploy` that a parser knows. */
import { readdirSync, readFileSync } from 'node:fs';
import { projectFile } from '../../src/project-files.js';
import { faultsOf } from './files.js';

for (const name of readdirSync(projectFile('deploy'), { withFileTypes: true })
  .filter((entry) => entry.isFile() && !entry.name.endsWith('.md'))
  .map((entry) => entry.name)) {
  const faults = faultsOf(name, readFileSync(projectFile('deploy', name), 'utf8'));
  if (faults === null) console.log(`deploy/${name}: not read here`);
  else if (faults.length === 0) console.log(`deploy/${name}: in order`);
  else {
    for (const fault of faults) console.error(`deploy/${name}: ${fault}`);
    process.exitCode = 1;
  }
}
