/** What the libraries are that the shipped programs hold: their licences, and the bill of materials. */
import { readdirSync, readFileSync } from 'node:fs';

/**
 * @param {string[]} files the sources of the programs, from the project's root
 * @returns the folder, name, version and licence of every library among them, in the order of their folders
 */
export function bundledPackages(files) {
  const folders = new Set(files.flatMap((file) => file.match(/^.*node_modules\/(?:@[^/]+\/)?[^/]+/) ?? []));
  return [...folders].sort().map((folder) => {
    const { name, version, license } = readJson(`${folder}/package.json`);
    return { folder, name, version, license };
  });
}

/** The licence of every library in full, as their licences ask. */
export function licenceTexts(packages) {
  return packages.map(({ folder, name, version }) => `${name} ${version}\n\n${licenceText(folder)}\n`).join('\n');
}

function licenceText(folder) {
  const file = readdirSync(folder).find((entry) => /^licen[cs]e/i.test(entry));
  if (file === undefined) throw new Error(`${folder} is bundled, but has no licence file.`);
  return readFileSync(`${folder}/${file}`, 'utf8').trim();
}

/** A software bill of materials (CycloneDX 1.6). Without a date or a serial number, so that two builds are the same. */
export function billOfMaterials(packages) {
  const { name, version, license } = readJson('package.json');
  const { packages: locked } = readJson('package-lock.json');
  const component = (type, each) => ({
    'bom-ref': `${each.name}@${each.version}`,
    type,
    name: each.name,
    version: each.version,
    purl: `pkg:npm/${each.name.replace('@', '%40')}@${each.version}`,
    licenses: [{ license: { id: each.license } }],
  });
  const bill = {
    bomFormat: 'CycloneDX',
    specVersion: '1.6',
    version: 1,
    metadata: { component: component('application', { name, version, license }) },
    components: packages.map((each) => ({
      ...component('library', each),
      hashes: [{ alg: 'SHA-512', content: hexOf(locked[placeOf(each.folder)].integrity) }],
    })),
  };
  return `${JSON.stringify(bill, null, 2)}\n`;
}

/** As the lock file names it, also where `node_modules` is a link to another folder. */
function placeOf(folder) {
  return folder.slice(folder.indexOf('node_modules/'));
}

/** The lock file has the hash of the archive that npm installs from, as `sha512-` and base64. */
function hexOf(integrity) {
  return Buffer.from(integrity.replace('sha512-', ''), 'base64').toString('hex');
}

function readJson(file) {
  return JSON.parse(readFileSync(file, 'utf8'));
}
