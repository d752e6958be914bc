/** One of several machines' share of a check. */
import { InvalidArgumentError } from 'commander';

export interface Shard {
  /** From 1. */
  readonly index: number;
  readonly of: number;
}

export function takeShard(text: string): Shard {
  const [, index, of] = /^(\d{1,6})\/(\d{1,6})$/.exec(text)?.map(Number) ?? [];
  if (!index || !of || of < index) {
    throw new InvalidArgumentError('Write which share of how many, such as 2/5.');
  }
  return { index, of };
}

/** Every so many-th, so that all shares are of a size, give or take one. */
export const shareOf = <T>(all: readonly T[], { index, of }: Shard): T[] =>
  all.filter((_, place) => place % of === index - 1);
