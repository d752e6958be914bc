/** Property tests draw the same cases at every run, so that a gate does not fall by chance; `SEED=7 npm test` draws others. */
import fc from 'fast-check';

fc.configureGlobal({ seed: Number(process.env.SEED ?? 1) });
