/**
 * The types of `tellshelf/client` as files that need nothing of ours beside them: the client's own declarations as
 * the compiler gives them, and what goes over the wire, which sources infer from zod schemas, written out.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const sources = join(dirname(fileURLToPath(import.meta.url)), 'shared', 'client');

export const writeClientTypes = async (folder) => {
  const [{ default: ts }, prettier] = await Promise.all([import('typescript'), import('prettier')]);
  const options = {
    target: ts.ScriptTarget.ES2023,
    module: ts.ModuleKind.NodeNext,
    moduleResolution: ts.ModuleResolutionKind.NodeNext,
    lib: ['lib.es2023.d.ts', 'lib.dom.d.ts'],
    strict: true,
    exactOptionalPropertyTypes: true,
    skipLibCheck: true,
    types: [],
    declaration: true,
    emitDeclarationOnly: true,
  };
  const program = ts.createProgram([join(sources, 'index.ts')], options);
  const checker = program.getTypeChecker();
  const { NoTruncation, InTypeAlias } = ts.TypeFormatFlags;
  const writtenOut = (alias) => {
    const type = checker.getTypeAtLocation(alias.name);
    const text = checker.typeToString(type, alias, NoTruncation | InTypeAlias);
    return `export type ${alias.name.text} = ${text};\n`;
  };
  mkdirSync(folder, { recursive: true });
  for (const file of program.getSourceFiles()) {
    if (dirname(file.fileName) !== sources) continue;
    const name = basename(file.fileName, '.ts');
    if (name === 'types') {
      const aliases = file.statements.filter(ts.isTypeAliasDeclaration);
      const text = await prettier.format(aliases.map(writtenOut).join('\n'), { parser: 'typescript' });
      writeFileSync(join(folder, 'types.d.ts'), text);
      continue;
    }
    program.emit(file, (_path, text) => writeFileSync(join(folder, `${name}.d.ts`), text));
  }
};
