/**
 * The long run: `npm run fuzz -- [INPUTS] [SEED]`. Prints what was tried, the slowest input, the memory, and every kind
 * of failure once, with the seed and the number of the input that show it again.
 */
import { fuzzFiles } from './file-fuzz.ts';

const [inputs = 1_000_000, seed = Date.now() % 2 ** 32] = process.argv.slice(2).map(Number);
const isSeen = process.stderr.isTTY;
const start = performance.now();

const { failures, slowest } = fuzzFiles(inputs, seed, (done) => {
  if (isSeen) process.stderr.write(`\r${done} of ${inputs}`);
});

const kinds = new Map(failures.map((failure) => [failure.wrong.replace(/\d+/g, '0').slice(0, 200), failure]));
for (const { input, path, wrong, text } of kinds.values()) {
  process.stdout.write(`input ${input}, from ${path}: ${wrong}\n${text}\n\n`);
}
const minutes = (performance.now() - start) / 60_000;
const memory = process.memoryUsage.rss() / 2 ** 20;
process.stdout.write(
  `${inputs} inputs with seed ${seed} in ${minutes.toFixed(1)} min: ${failures.length} failures; ` +
    `the slowest took ${Math.round(slowest)} ms; ${Math.round(memory)} MB in the end\n`,
);
process.exitCode = failures.length === 0 ? 0 : 1;
