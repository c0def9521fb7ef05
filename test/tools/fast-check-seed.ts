/**
 * Random tests draw the same numbers in every run, so that a red run is red again; DEWRIGHT_SEED draws others.
 */
import fc from 'fast-check';

fc.configureGlobal({ seed: Number(process.env['DEWRIGHT_SEED'] ?? 20_261_125) });
