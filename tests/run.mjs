// Runs what must hold before a change is handed in: types, lint, build, tests. The last line gives
// the true numbers from vitest's own report.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';

const require = createRequire(import.meta.url);
const root = path.resolve(import.meta.dirname, '..');

/** The script behind a package's command, so that it starts the same way on every system. */
function commandOf(name, command) {
  const manifest = require.resolve(`${name}/package.json`);
  const { bin } = JSON.parse(readFileSync(manifest, 'utf8'));
  return path.join(path.dirname(manifest), typeof bin === 'string' ? bin : bin[command]);
}

function run(title, script, args) {
  console.log(`\n== ${title}`);
  const { status } = spawnSync(process.execPath, [script, ...args], {
    cwd: root,
    stdio: 'inherit',
  });
  return status ?? 1;
}

const steps = [
  ['types', commandOf('typescript', 'tsc'), ['--noEmit', '-p', '.']],
  ['lint and format', commandOf('@biomejs/biome', 'biome'), ['check', '--error-on-warnings', '.']],
];
for (const [title, script, args] of steps) {
  if (run(title, script, args) !== 0) {
    console.log(`${title} failed\n0 passed, 1 failed`);
    process.exit(1);
  }
}

const folder = mkdtempSync(path.join(tmpdir(), 'raree-tests-'));
const report = path.join(folder, 'report.json');
const status = run('tests', commandOf('vitest', 'vitest'), [
  'run',
  '--reporter=default',
  '--reporter=json',
  `--outputFile.json=${report}`,
  ...process.argv.slice(2),
]);
const { numPassedTests, numFailedTests, numFailedTestSuites, testResults } = JSON.parse(
  readFileSync(report, 'utf8'),
);
rmSync(folder, { recursive: true });
for (const file of testResults.filter(
  (r) => r.status === 'failed' && r.assertionResults.length === 0,
)) {
  console.log(`${path.relative(root, file.name)} did not run: ${file.message}`);
}
// A file that does not load holds tests that did not pass.
const failed =
  numFailedTests > 0 ? numFailedTests : status === 0 ? 0 : Math.max(1, numFailedTestSuites);
console.log(`${numPassedTests} passed, ${failed} failed`);
process.exit(status);
