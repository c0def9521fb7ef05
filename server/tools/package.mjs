/**
 * Packs what was built as an extension, `dewright-VERSION.vsix`; what follows the call goes to vsce, such as
 * `--out FILE`. Two packs of the same build have the same bytes.
 */
import { spawnSync } from 'node:child_process';

/** The oldest time that a zip file can say: files then carry it instead of their own, and come in the order of names. */
const NO_TIME = { SOURCE_DATE_EPOCH: String(Date.UTC(1980, 0, 1) / 1000), TZ: 'UTC' };

const options = [
  '--no-dependencies', // they are bundled
  '--allow-missing-repository', // the sources have no public home, and the manifest must not name one that is not there
  '--no-rewrite-relative-links', // they lead to what is packed
  '--readme-path=client/README.md',
];

const vsce = ['node_modules/@vscode/vsce/vsce', 'package', ...options, ...process.argv.slice(2)];
const { status } = spawnSync(process.execPath, vsce, { stdio: 'inherit', env: { ...process.env, ...NO_TIME } });
process.exitCode = status ?? 1;
