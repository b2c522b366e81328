import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';

/** Builds the commands once, before any test runs them. */
export default function build(): void {
  const root = path.resolve(import.meta.dirname, '../..');
  const manifest = createRequire(import.meta.url).resolve('typescript/package.json');
  const { bin } = JSON.parse(readFileSync(manifest, 'utf8')) as { bin: { tsc: string } };
  const tsc = path.join(path.dirname(manifest), bin.tsc);
  const { status, stdout } = spawnSync(process.execPath, [tsc, '-p', 'tsconfig.build.json'], {
    cwd: root,
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(`The commands do not build:\n${stdout}`);
}
