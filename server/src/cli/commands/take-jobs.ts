import { InvalidArgumentError } from 'commander';

/** How many threads, from an argument. */
export function takeJobs(written: string): number {
  const jobs = /^\d{1,3}$/.test(written) ? Number(written) : 0;
  if (jobs < 1 || 256 < jobs) throw new InvalidArgumentError('It is no number from 1 to 256.');
  return jobs;
}
