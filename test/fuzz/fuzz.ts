/**
 * The long run: `npm run fuzz -- [INPUTS] [SEED]`. Of the inputs most are harmed files in the analysis, a fifth are
 * messages to the language server, and one in a hundred is a file for the built command line. It prints what was tried,
 * the slowest input, the memory, and every kind of failure once, with the seed that shows it again.
 */
import { fuzzFiles } from './file-fuzz.ts';
import { checkHarmedFolder } from './program-fuzz.ts';
import { sendTraffic } from './traffic.ts';

const [inputs = 1_000_000, seed = Date.now() % 2 ** 32] = process.argv.slice(2).map(Number);
const MESSAGES_IN_A_SESSION = 2000;
const FILES_IN_A_FOLDER = 100;

const start = performance.now();
const messages = Math.floor(inputs / 5);
const programFiles = Math.floor(inputs / 100);
const told = process.stderr.isTTY ? (done: number) => process.stderr.write(`\r${done} of ${inputs}`) : () => {};
const problems = new Map<string, string>();
const report = (where: string, wrong: string, text = ''): void => {
  problems.set(`${where}: ${wrong.replace(/\d+/g, '0').slice(0, 200)}`, `${where}: ${wrong}\n${text}`);
};

const { failures, slowest } = fuzzFiles(inputs - messages - programFiles, seed, told);
for (const { input, path, wrong, text } of failures) report(`file ${input}, from ${path}`, wrong, text);

for (let sent = 0; sent < messages; sent += MESSAGES_IN_A_SESSION) {
  for (const wrong of await sendTraffic(MESSAGES_IN_A_SESSION, seed + sent)) {
    report(`messages with seed ${seed + sent}`, wrong);
  }
}

for (let done = 0; done < programFiles; done += FILES_IN_A_FOLDER) {
  const wrong = checkHarmedFolder(FILES_IN_A_FOLDER, seed + done);
  if (wrong !== undefined) report(`folder with seed ${seed + done}`, wrong);
}

for (const problem of problems.values()) process.stdout.write(`${problem}\n\n`);
const minutes = (performance.now() - start) / 60_000;
process.stdout.write(
  `${inputs} inputs with seed ${seed} in ${minutes.toFixed(1)} min: ${problems.size} kinds of failure; the slowest file ` +
    `took ${Math.round(slowest)} ms; ${Math.round(process.memoryUsage.rss() / 2 ** 20)} MB in the end\n`,
);
process.exitCode = problems.size === 0 ? 0 : 1;
